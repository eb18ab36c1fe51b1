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
        list.add("readied-day-before", "a brooder is readied the day before its birds come, where no rest is stated",
                 {"what is taken where nothing is stated", Standing::common_practice});
    }
    if (!readying.bedding.empty()) {
        list.add(
            "bedding-depth",
            "bedding: depth times floor, all of it new each time; a bag holds what is stated of it once it is loose",
            {"geometry; pressed bales name both volumes", Standing::from_memory});
    }
    for (DisinfectantPurchase const& one : readying.disinfectants) {
        list.add("dilution",
                 one.title +
                     ": parts of water to one part of product are strength over use_at, less 1 (3.5 % to 0.5 % "
                     "is 6 parts)",
                 {"CDC, Best Practices, Appendix E (chlorine-disinfectant)", Standing::published});
        list.add("strength-by-weight",
                 one.title +
                     ": strength and use_at are the same kind of per cent; by weight and by volume differ by "
                     "the product's density (household bleach: by about 8 %)",
                 {"from memory", Standing::from_memory});
    }
}

/// Brooders that are wanted on the day they are left.
void no_time_to_clean(CautionList& list, Plan const& plan) {
    for (Stay const& stay : plan.placement.stays) {
        domain::Brooder const& sort = plan.farm.brooders.at(stay.brooder);
        if (stay.ready_by < stay.from || !(sort.bedding || sort.cleaning)) continue;
        list.add("no-time-to-clean",
                 stay.hatch + ": there is no time to ready " + stay.brooder +
                     " before it comes. Move the hatch, or state a rest; never clean or disinfect around birds.",
                 "the brooders of the farm file");
    }
}

void readying_cautions(CautionList& list, Plan const& plan) {
    no_time_to_clean(list, plan);
    for (DisinfectantPurchase const& one : plan.readying.disinfectants) {
        list.add("disinfectant-label",
                 one.title +
                     ": the product's label decides what it may be used on, how strong and for how long it must "
                     "stay wet (contact time), and what is rinsed after; these are only sums on the two "
                     "strengths you stated. The label, your veterinarian and local law decide.",
                 "the product's label");
        list.add(
            "disinfectant-mixing",
            "Never mix a disinfectant with ammonia, acids or any other cleaner: chlorine with either gives off "
            "poisonous gas. Droppings and wet litter smell of ammonia: take them out first.",
            "NJ Poison Center, njpies.org/chlorine (chlorine with ammonia or acid); droppings: common practice, no "
            "source");
        list.add("birds-out-first",
                 "Birds out first: never disinfect around them. Scrub off dirt before disinfecting; afterwards rinse "
                 "as the label says, dry and air the brooder "
                 "before any bird goes in.",
                 "common practice, no source");
        list.add("disinfectant-fresh",
                 "Mix disinfectant fresh every day: diluted bleach is good for 24 h. Wear gloves and keep doors open.",
                 "CDC leaflet CS316270A (2020) for the 24 h; gloves and air: common practice, no source");
    }
}

}  // namespace cropful::engine
