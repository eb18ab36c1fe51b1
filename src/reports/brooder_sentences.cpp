#include "reports/sentences.hpp"

namespace cropful::reports {

Sentences brooder_sentences() {
    return {
        {"no-brooder",
         "{hatches}: {birds} of {all} birds have no place in {brooder}; `cropful season` says when and what would "
         "fit."},
        {"shared-house",
         "{hatches} live together in {house}. Each is planned with hoppers and drinkers for its own birds, but birds "
         "eat and drink from all of them: give them the same feed and water, and no medicine that is for one alone. "
         "Older birds pass on what they carry, and birds of unlike age or kind fight; ask before they are put "
         "together. {defer}"},
        {"no-time-to-clean",
         "{hatches}: there is no time to ready {brooder} before it comes. Move the hatch, or state a rest; never clean "
         "or disinfect around birds."},
        {"disinfectant-label",
         "{disinfectant}: the product's label decides what it may be used on, how strong and for how long it must stay "
         "wet (contact time), and what is rinsed after; these are only sums on the two strengths you stated. {defer}"},
        {"disinfectant-mixing",
         "Never mix a disinfectant with ammonia, acids or any other cleaner: chlorine with either gives off poisonous "
         "gas. Droppings and wet litter smell of ammonia: take them out first."},
        {"birds-out-first",
         "Birds out first: never disinfect around them. Scrub off dirt before disinfecting; afterwards rinse as the "
         "label says, dry and air the brooder before any bird goes in."},
        {"disinfectant-fresh",
         "Mix disinfectant fresh every day: diluted bleach is good for 24 h. Wear gloves and keep doors open."},
    };
}

Sentences brooder_notes() {
    return {
        {"readied-day-before", "a brooder is readied the day before its birds come, where no rest is stated"},
        {"bedding-depth",
         "bedding: depth times floor, all of it new each time; a bag holds what is stated of it once it is loose"},
        {"dilution",
         "{disinfectant}: parts of water to one part of product are strength over use_at, less 1 (3.5 % to 0.5 % is 6 "
         "parts)"},
        {"strength-by-weight",
         "{disinfectant}: strength and use_at are the same kind of per cent; by weight and by volume differ by the "
         "product's density (household bleach: by about 8 %)"},
        {"brooders-taken",
         "a hatch takes as many brooders as its most crowded day needs, for its whole stay; earlier hatches come "
         "first; "
         "two hatches never share a brooder"},
        {"houses-shared",
         "{house} is shared: each hatch spreads evenly over the houses it needs, and joins others where all birds "
         "there, "
         "to be sure, never fill more than the house; kinds add up by the share of it that each fills"},
        {"nearest-date",
         "a date on which a hatch would fit: all hatches placed anew, it after others of that day, and none of them "
         "gets fewer brooders than now; looked for up to 366 d away"},
        {"warmth", "warmth under the brooder for {kind}"},
        {"room", "room, feeder and water trough for {kind}"},
        {"signs", "what to watch: {sign}"},
        {"lamps", "heat lamps: {rule}"},
    };
}

}  // namespace cropful::reports
