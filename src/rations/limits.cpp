#include "cropful/rations/limits.hpp"

#include <algorithm>

namespace cropful::rations {

std::vector<Limit const*> passed(std::vector<Limit> const& limits, std::string_view key, double level) {
    std::vector<Limit const*> all;
    for (Limit const& limit : limits) {
        bool const reached = level > limit.level || (limit.stop && level >= limit.level);
        if (limit.key == key && reached) all.push_back(&limit);
    }
    std::stable_sort(all.begin(), all.end(), [](Limit const* a, Limit const* b) { return a->level < b->level; });
    return all;
}

Limit const* deadly(std::vector<Limit const*> const& passed) {
    auto const last = std::find_if(passed.rbegin(), passed.rend(), [](Limit const* limit) { return limit->stop; });
    return last == passed.rend() ? nullptr : *last;
}

std::string words_of(Limit const& limit) { return limit.words + " (" + limit.applies + "): " + limit.meaning; }

}  // namespace cropful::rations
