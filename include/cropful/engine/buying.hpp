#pragma once

#include <string>
#include <vector>

#include "cropful/engine/plan.hpp"
#include "cropful/engine/trips.hpp"

/// When to go and buy what for a plan.
namespace cropful::engine {

/// A supplement for every course planned, all to be there when the first starts; how much says `plan.supplements`.
struct PacksBought {
    std::string supplement;
    Moment by;
    std::optional<std::size_t> trip;  // the last on or before that day; none where the first is later
    std::optional<int> packs;         // safe; absent where they cannot be counted
    std::optional<Money> cost;
};

/// Another way to shop, to compare with.
struct OtherWay {
    std::string policy;  // "each hatch", "monthly"
    Money cost;
    int trips;
};

struct TripPlan {
    Plan plan;                       // with what the trips rest on among its assumptions
    Moment first;                    // day 0, at 00:00
    std::vector<std::string> feeds;  // the keys of the feeds of `buying`
    std::vector<Mass> spare;         // of each feed; set aside on the first day it is fed, so added to that day's need
    Buying buying;
    Shopping shopping;
    std::vector<PacksBought> packs;
    std::vector<OtherWay> against;
    [[nodiscard]] Moment date(int day) const { return first + days(day); }
};

/// Throws NoAnswer where a feed's bags have no size or price, and where no trips can feed every day.
TripPlan plan_trips(Plan const& plan);

}  // namespace cropful::engine
