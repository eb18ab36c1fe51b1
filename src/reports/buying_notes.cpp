#include "reports/sentences.hpp"

namespace cropful::reports {

Sentences buying_notes() {
    return {
        {"sure-amount",
         "each hatch's feed is the amount that is sure 19 times in 20, over its days as a usual flock eats it"},
        {"oldest-first",
         "the oldest feed is fed first, and what is older than it keeps, in whole days, is thrown away"},
        {"trip-free",
         "a trip costs nothing (say what one costs with `trip` in [store]): only bags and keeping count, and of two "
         "ways "
         "that cost the same the one with fewer trips is taken"},
        {"store-unstated", "the store holds all that is bought (store.holds is not stated)"},
        {"first-trip", "what the first trip brings may be fed at once; go {lead} earlier if you can"},
        {"trip-on-first-day",
         "one can buy on {day} although it is none of store.trips: without it feed would be missing before the next"},
        {"on-hand-fresh", "{feed}: the {on_hand} on hand are as fresh as if bought on the first day"},
        {"spare-set-aside",
         "{feed}: the {spare} to spare are set aside on the first day it is fed; they take no room and cost nothing to "
         "keep"},
        {"keeps-unstated", "{feed} keeps as long as it is wanted (keeps is not stated)"},
        {"other-ways",
         "the other ways buy in the cheapest bags, go once more where feed would be missing, and do not look at the "
         "room "
         "in the store"},
        {"cost-of-feed",
         "feed costs what it weighs, at the price of its bag: what is left in the last bag is not counted"},
    };
}

}  // namespace cropful::reports
