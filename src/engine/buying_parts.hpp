#pragma once

#include <cstddef>

#include <vector>

#include "cropful/engine/buying.hpp"

namespace cropful::engine {

using namespace quantities;

/// The place of a day, 0 or later, in what is listed day by day.
constexpr std::size_t at(int day) { return static_cast<std::size_t>(day); }

/// One hatch's need of one feed from a day on.
struct Want {
    std::size_t feed;
    int from;
    FeedNeed const* need;  // of the trips' plan
};
/// One hatch's first day and all it needs.
struct Order {
    int day = 0;
    std::vector<Want> wants{};
};
std::vector<Order> orders_of(TripPlan const& trips);
/// Adds what is wanted to the days of its feed.
void add_to(std::vector<Mass>& days, Want const& want);

/// Whether what is on hand of a feed does not last to before `end`.
bool is_short(FeedToBuy const& feed, std::size_t end);

/// What it comes to for each hatch when it comes, and for the months as they come.
std::vector<OtherWay> other_ways(TripPlan const& trips, std::vector<Order> const& orders);

void add_assumptions(TripPlan& trips);

}  // namespace cropful::engine
