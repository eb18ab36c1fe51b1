#include <algorithm>

#include "engine/buying_parts.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Standing;

Source const chosen{"chosen here, no source", Standing::common_practice};
Source const nothing_stated{"what is taken where nothing is stated", Standing::common_practice};

/// How the store and the trips are reckoned with.
void about_store(TripPlan const& trips, std::vector<Assumption>& all) {
    auto const& store = trips.plan.farm.store;
    if (!store || store->trip == money(0)) {
        all.push_back({.id = "trip-free", .source = nothing_stated});
    }
    if (!store || !store->holds) all.push_back({.id = "store-unstated", .source = nothing_stated});
    if (!trips.shopping.trips.empty() && trips.shopping.trips.front().day == 0 && trips.buying.lead > 0) {
        all.push_back({.id = "first-trip", .with = {{"lead", days(trips.buying.lead)}}, .source = chosen});
    }
    if (!store || store->trips.empty()) return;
    std::chrono::weekday const first(std::chrono::sys_days(trips.first.date()));
    bool const usual = std::find(store->trips.begin(), store->trips.end(), first) != store->trips.end();
    if (!usual && trips.buying.trips.front()) {
        all.push_back({.id = "trip-on-first-day", .with = {{"day", trips.first}}, .source = chosen});
    }
}

void about_feeds(TripPlan const& trips, std::vector<Assumption>& all) {
    for (std::size_t i = 0; i < trips.feeds.size(); ++i) {
        domain::Feed const& feed = trips.plan.farm.feeds.at(trips.feeds[i]);
        if (feed.on_hand > kilograms(0)) {
            all.push_back(
                {.id = "on-hand-fresh", .with = {{"feed", feed.title}, {"on_hand", feed.on_hand}}, .source = chosen});
        }
        if (feed.spare > kilograms(0)) {
            all.push_back(
                {.id = "spare-set-aside", .with = {{"feed", feed.title}, {"spare", feed.spare}}, .source = chosen});
        }
        if (!feed.keeps) {
            all.push_back({.id = "keeps-unstated", .with = {{"feed", feed.title}}, .source = nothing_stated});
        }
    }
}

}  // namespace

void add_assumptions(TripPlan& trips) {
    auto& all = trips.plan.assumptions;
    all.push_back({.id = "sure-amount", .source = {"`cropful plan`", Standing::derived}});
    all.push_back({.id = "oldest-first", .source = chosen});
    about_store(trips, all);
    about_feeds(trips, all);
    if (!trips.against.empty()) all.push_back({.id = "other-ways", .source = chosen});
}

}  // namespace cropful::engine
