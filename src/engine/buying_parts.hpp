#pragma once

#include <vector>

#include "cropful/engine/buying.hpp"

namespace cropful::engine {

/// One hatch's first day and its need of each feed on each day.
struct Order {
    int day;
    std::vector<std::vector<Mass>> needs;
};
std::vector<Order> orders_of(TripPlan const& trips);
void add_to(std::vector<Mass>& sum, std::vector<Mass> const& more);

/// Whether what is on hand of a feed does not last to before `end`.
bool is_short(FeedToBuy const& feed, std::size_t end);

/// What it comes to for each hatch when it comes, and for the months as they come.
std::vector<OtherWay> other_ways(TripPlan const& trips, std::vector<Order> const& orders);

void add_assumptions(TripPlan& trips);

}  // namespace cropful::engine
