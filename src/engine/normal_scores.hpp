#pragma once

#include <vector>

#include "engine/arrays.hpp"

/// The standard normal distribution, many scores at a time; normal.hpp has one.
namespace cropful::engine {

/// The score below which lies each of these chances, which are above 0 and below 1: true to 2e-15 of it.
std::vector<double> scores_at(std::vector<double> const& chances);

/// The chances of scores below these: true to 3e-16.
Few below_scores(Few const& scores);

}  // namespace cropful::engine
