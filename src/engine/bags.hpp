#pragma once

#include <map>
#include <string>

#include "cropful/engine/plan.hpp"

namespace cropful::engine {

using namespace quantities;

/// Packs of which so many parts are needed, whole; none below 0. Throws NoAnswer for more than 10 million.
int whole(double packs);
/// Nothing for no packs, whatever they cost.
std::optional<Money> cost(std::optional<Money> price, int packs);

/// Fills in the bags and cost of every feed and supplement of the plan, and what all costs with what readies the
/// brooders.
/// Whole bags are shared: hatches in order of date use the stock on hand, then what earlier hatches left in their last
/// bag, so a hatch's bags are the difference of two ceilings and the bags of all hatches add up to the farm's.
/// `needs` are the bands of each feed's whole need.
/// From now on a feed of the plan's farm has on hand what the store holds when the plan begins.
void count_bags(Plan& plan, std::map<std::string, Band<Mass>> const& needs,
                std::map<std::string, StoreCount> const& store);

}  // namespace cropful::engine
