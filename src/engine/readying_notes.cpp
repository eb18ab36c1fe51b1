#include <algorithm>

#include "engine/assumptions.hpp"
#include "engine/caution_list.hpp"

namespace cropful::engine {

using domain::Standing;

void about_readying(AssumptionList& list, domain::Farm const& farm, Readying const& readying) {
    if (readying.bedding.empty() && readying.disinfectants.empty()) return;
    bool const unstated = std::any_of(farm.brooders.begin(), farm.brooders.end(), [](auto const& named) {
        return (named.second.bedding || named.second.cleaning) && !named.second.rest;
    });
    if (unstated) {
        list.add({.id = "readied-day-before",
                  .source = {"what is taken where nothing is stated", Standing::common_practice}});
    }
    if (!readying.bedding.empty()) {
        list.add(
            {.id = "bedding-depth", .source = {"geometry; pressed bales name both volumes", Standing::from_memory}});
    }
    for (DisinfectantPurchase const& one : readying.disinfectants) {
        list.add({.id = "dilution",
                  .with = {{"disinfectant", one.title}},
                  .source = {"CDC, Best Practices, Appendix E (chlorine-disinfectant)", Standing::published}});
        list.add({.id = "strength-by-weight",
                  .with = {{"disinfectant", one.title}},
                  .source = {"from memory", Standing::from_memory}});
    }
}

/// Brooders that are wanted on the day they are left.
void no_time_to_clean(CautionList& list, Plan const& plan) {
    for (Stay const& stay : plan.placement.stays) {
        domain::Brooder const& sort = plan.farm.brooders.at(stay.brooder);
        if (stay.joins || stay.ready_by < stay.from || !(sort.bedding || sort.cleaning)) continue;
        list.add({.id = "no-time-to-clean",
                  .hatches = {stay.hatch},
                  .with = {{"brooder", stay.brooder}},
                  .source = "the brooders of the farm file"});
    }
}

void readying_cautions(CautionList& list, Plan const& plan) {
    no_time_to_clean(list, plan);
    for (DisinfectantPurchase const& one : plan.readying.disinfectants) {
        list.add({.id = "disinfectant-label", .with = {{"disinfectant", one.title}}, .source = "the product's label"});
        list.add({.id = "disinfectant-mixing",
                  .source = "NJ Poison Center, njpies.org/chlorine (chlorine with ammonia or acid); droppings: common "
                            "practice, no source"});
        list.add({.id = "birds-out-first", .source = "common practice, no source"});
        list.add({.id = "disinfectant-fresh",
                  .source = "CDC leaflet CS316270A (2020) for the 24 h; gloves and air: common practice, no source"});
    }
}

}  // namespace cropful::engine
