#include "cropful/rations/pantry.hpp"

#include <algorithm>

#include "cropful/domain/nutrient.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"

namespace cropful::rations {

using namespace quantities;

namespace {

using domain::Ingredient;

Ingredient from_feed(domain::Feed const& feed) {
    Ingredient one{.key = feed.key,
                   .title = feed.title,
                   .like = "",
                   .price = domain::price_by_weight(feed),
                   .holds = {},
                   .at_most = {},
                   .source = {}};
    if (feed.energy) {
        double const energy = in_kilocalories_per_kilogram(*feed.energy);
        one.holds["energy"] = {energy, energy, domain::Standing::yours};
    }
    for (auto const& [key, guarantee] : feed.label) {
        // Of fibre labels state the most, and a ceiling must reckon with it; of others a most says nothing of what is
        // in it.
        bool const most = domain::find_nutrient(key)->label_maximum;
        auto const stated = most && guarantee.maximum ? guarantee.maximum : guarantee.minimum;
        if (stated) one.holds[key] = {*stated, guarantee.maximum, domain::Standing::yours};
    }
    one.medicated = feed.medicated.has_value();
    return one;
}

bool holds_key(std::vector<Ingredient> const& all, std::string const& key) {
    return std::any_of(all.begin(), all.end(), [&](Ingredient const& one) { return one.key == key; });
}

std::string phases_of(NeedsTable const& needs) {
    std::vector<std::string> names;
    for (Phase const& phase : needs.phases) names.push_back("\"" + phase.name + "\"");
    return "one of " + domain::join(names);
}

}  // namespace

std::vector<Ingredient> pantry(domain::Farm const& farm, std::vector<Ingredient> const& built_in) {
    std::vector<Ingredient> all = farm.ingredients;
    for (auto const& [key, feed] : farm.feeds) {
        if (!holds_key(all, key)) all.push_back(from_feed(feed));
    }
    for (Ingredient const& one : built_in) {
        if (!holds_key(all, one.key)) all.push_back(one);
    }
    return all;
}

std::vector<Ingredient> chosen(domain::Farm const& farm, domain::Blend const& blend,
                               std::vector<Ingredient> const& pantry) {
    std::vector<std::string> names = blend.use;
    if (!blend.amounts.empty()) {
        names.clear();
        for (auto const& one : blend.amounts) names.push_back(one.ingredient);
    }
    if (names.empty()) return farm.ingredients;
    std::vector<Ingredient> found;
    for (std::string const& name : names) {
        auto const one = std::find_if(pantry.begin(), pantry.end(), [&](Ingredient const& i) { return i.key == name; });
        if (one != pantry.end() && !holds_key(found, name)) found.push_back(*one);
    }
    return found;
}

Phase const& phase_for(NeedsTable const& needs, domain::Blend const& blend) {
    for (Phase const& phase : needs.phases) {
        if (blend.phase) {
            if (phase.name == *blend.phase) return phase;
        } else if (blend.laying || phase.laying) {
            if (blend.laying && phase.laying) return phase;
        } else if (blend.age && phase.from <= *blend.age && (!phase.to || *blend.age < *phase.to)) {
            return phase;
        }
    }
    if (blend.phase) throw BadInput(in_quotes(*blend.phase), phases_of(needs));
    if (blend.laying) throw BadInput("birds in lay", "a phase of " + needs.title + ": " + phases_of(needs));
    if (!blend.age) throw BadInput("no age", "an age such as \"3 wk\", laying, or a phase: " + phases_of(needs));
    throw BadInput("the age " + print_age(*blend.age), "an age of the phases " + phases_of(needs));
}

}  // namespace cropful::rations
