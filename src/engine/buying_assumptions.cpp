#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "engine/buying_parts.hpp"

namespace cropful::engine {

namespace {

using domain::Standing;

Source const chosen{"chosen here, no source", Standing::common_practice};
Source const nothing_stated{"what is taken where nothing is stated", Standing::common_practice};

/// How the store and the trips are reckoned with.
void about_store(TripPlan const& trips, std::vector<Assumption>& all) {
    auto const& store = trips.plan.farm.store;
    if (!store || store->trip == money(0)) {
        all.push_back(
            {"trip-free",
             "a trip costs nothing (say what one costs with `trip` in [store]): only bags and keeping count, and of "
             "two ways that cost the same the one with fewer trips is taken",
             nothing_stated});
    }
    if (!store || !store->holds) {
        all.push_back(
            {"store-unstated", "the store holds all that is bought (store.holds is not stated)", nothing_stated});
    }
    if (!trips.shopping.trips.empty() && trips.shopping.trips.front().day == 0 && trips.buying.lead > 0) {
        all.push_back({"first-trip",
                       "what the first trip brings may be fed at once; go " + print(days(trips.buying.lead)) +
                           " earlier if you can",
                       chosen});
    }
    if (!store || store->trips.empty()) return;
    std::chrono::weekday const first(std::chrono::sys_days(trips.first.date()));
    bool const usual = std::find(store->trips.begin(), store->trips.end(), first) != store->trips.end();
    if (!usual && trips.buying.trips.front()) {
        all.push_back({"trip-on-first-day",
                       "one can buy on " + trips.first.day() +
                           " although it is none of store.trips: without it feed would be missing before the next",
                       chosen});
    }
}

void about_feeds(TripPlan const& trips, std::vector<Assumption>& all) {
    for (std::size_t i = 0; i < trips.feeds.size(); ++i) {
        domain::Feed const& feed = trips.plan.farm.feeds.at(trips.feeds[i]);
        if (feed.on_hand > kilograms(0)) {
            all.push_back({"on-hand-fresh",
                           feed.title + ": the " + print(feed.on_hand, trips.plan.farm.measures) +
                               " on hand are as fresh as if bought on the first day",
                           chosen});
        }
        if (feed.spare > kilograms(0)) {
            all.push_back({"spare-set-aside",
                           feed.title + ": the " + print(feed.spare, trips.plan.farm.measures) +
                               " to spare are set aside on the first day it is fed; they take no room and cost nothing "
                               "to keep",
                           chosen});
        }
        if (!feed.keeps)
            all.push_back({"keeps-unstated", feed.title + " keeps as long as it is wanted (keeps is not stated)",
                           nothing_stated});
    }
}

}  // namespace

void add_assumptions(TripPlan& trips) {
    auto& all = trips.plan.assumptions;
    all.push_back(
        {"sure-amount",
         "each hatch's feed is the amount that is sure 19 times in 20, over its days as a usual flock eats it",
         {"`cropful plan`", Standing::derived}});
    all.push_back({"oldest-first",
                   "the oldest feed is fed first, and what is older than it keeps, in whole days, is thrown away",
                   chosen});
    about_store(trips, all);
    about_feeds(trips, all);
    if (!trips.against.empty()) {
        all.push_back({"other-ways",
                       "the other ways buy in the cheapest bags, go once more where feed would be missing, and do not "
                       "look at the room in the store",
                       chosen});
    }
}

}  // namespace cropful::engine
