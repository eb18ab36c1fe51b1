#include "reports/sentences.hpp"

namespace cropful::reports {

Sentences bird_notes() {
    return {
        {"intake-growing", "feed eaten by growing {kind}: the built-in table by age"},
        {"intake-laying", "feed eaten by laying {kind}: {rate} per bird and day"},
        {"deaths", "deaths of {kind}: the built-in table by age"},
        {"hatch-rate", "{rate} of {kind} eggs set hatch ({low} to {high} is usual, and what is sure allows for it)"},
        {"incubation",
         "{hatch}: eggs set on {set} hatch about {date} ({low} to {high} d in the incubator); houses are ready for "
         "the first of them"},
        {"chores-unstated", "somebody is in the barn at {hours} (farm.chores is not stated)"},
        {"wholesome",
         "feed stays wholesome in {hopper} for 7 d under 3 weeks of age and 14 d later (at_most is not stated)"},
        {"least-unstated",
         "{drinker}: marbles are stated, but not what its trough needs before birds can drink (least): taken as none"},
        {"stock-as-of-now", "{feed}: what is on hand was counted now (counted is not stated)"},
        {"hatch-rate-stated",
         "of the eggs of {hatch} {rate} hatch, as stated: what is sure is so at that rate and not below or above it"},
        {"water-ratio", "{kind} drink {ratio} of feed"},
        {"warmth-unstated",
         "the barn is never hot enough to change what birds eat or drink (farm.warmth is not stated)"},
        {"heat-appetite", "{kind} eat {fall} less per {fall:degree} above {above} from {from} on, when brooding ends"},
        {"heat-thirst",
         "{kind} drink {rise} more for the same feed per {rise:degree} above {above} from {from} on, when brooding "
         "ends"},
        {"energy-appetite", "{feed}: birds eat less of a richer feed, by its energy to the power {power}"},
        {"energy-unstated/growing",
         "{feed}: energy as in the table of growing {kind}, {energy} (the label states none)"},
        {"energy-unstated/laying", "{feed}: energy as in the table of laying {kind}, {energy} (the label states none)"},
        {"weight-of-feed/stated", "{feed}: {shape} weighs {density}"},
        {"weight-of-feed/unstated", "{feed}: {shape} (no form stated) weighs {density}"},
        {"flocks-apart",
         "of flocks 1 in 20 eats, drinks or dies less than the low column of the tables says, and 1 in 20 more than "
         "the "
         "high one (`cropful table`)"},
        {"hopper-weight", "what a full hopper weighs varies from fill to fill (standard deviation {deviation})"},
        {"shared-doubt",
         "what a table does not know is the same for all flocks of its kind: {by_kind} of how far they lie from it, "
         "{by_model} where its weeks are a growth model's; {by_farm} between two kinds of one farm"},
        {"top-up", "a top-up measures what was used to within {deviation} (standard deviation)"},
        {"needs-table/feed", "needs of {kind}: the {table} table, {basis}"},
        {"needs-of-another", "{kind} are judged by the {table} table"},
        {"needs-scaled", "needs are scaled to the energy each label states, as printed where it states none"},
        {"eggs", "{hatch}: {lays} eggs per bird alive and day, cocks counted as birds"},
    };
}

}  // namespace cropful::reports
