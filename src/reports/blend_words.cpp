#include "reports/blend_words.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/print.hpp"

namespace cropful::reports {

namespace {

using blends::BlendAnswer;
using blends::BlendLimit;

/// What is limited: a nutrient, or an ingredient by its title.
std::string subject(BlendLimit const& limit, BlendAnswer const& answer) {
    if (!limit.per.empty()) return "as much " + nutrient_title(limit.key) + " as " + nutrient_title(limit.per);
    if (limit.of == BlendLimit::Of::nutrient) return nutrient_title(limit.key);
    auto const same = [&](blends::BlendPart const& part) { return part.key == limit.key; };
    auto const found = std::find_if(answer.parts.begin(), answer.parts.end(), same);
    return (found == answer.parts.end() ? limit.key : found->title) + " in the mix";
}

}  // namespace

std::string limit_level(BlendLimit const& limit, double level) {
    if (!limit.per.empty()) return quantities::plain(std::round(level * 100) / 100) + " times";
    return limit.of == BlendLimit::Of::nutrient ? level_words(limit.key, level) : quantities::percent(level);
}

std::string limit_words(BlendLimit const& limit, BlendAnswer const& answer) {
    return (limit.floor ? "at least " : "at most ") + limit_level(limit, limit.level) + " " + subject(limit, answer) +
           (limit.borrowed ? " (borrowed)" : "");
}

std::string limit_step(blends::ShadowPrice const& price, BlendAnswer const& answer) {
    BlendLimit const& limit = price.limit;
    std::string const from = limit_level(limit, limit.level) + (limit.for_energy ? " in the table" : "") +
                             (limit.borrowed ? " (borrowed)" : ""),
                      to = limit_level(limit, price.to);
    if (limit.of == BlendLimit::Of::nutrient && limit.key == "protein" && limit.floor) {
        return "one more point of protein (" + to + " instead of " + from + ")";
    }
    return (limit.floor ? "asking for " : "allowing ") + to + " " + subject(limit, answer) + " instead of " + from;
}

}  // namespace cropful::reports
