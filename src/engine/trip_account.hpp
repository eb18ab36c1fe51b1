#pragma once

#include "engine/trip_search.hpp"

namespace cropful::engine {

/// Tables that hold all that could be bought of each feed at once.
std::vector<BagTable> bag_tables(Buying const& buying, std::vector<Eating> const& eating);

/// What loads, in order of day, come to, day by day. They feed every day.
Shopping account(Buying const& buying, std::vector<BagTable> const& tables, std::vector<Load> const& loads);

}  // namespace cropful::engine
