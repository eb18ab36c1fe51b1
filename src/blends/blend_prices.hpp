#pragma once

#include "blends/blend_problem.hpp"

namespace cropful::blends {

/// What a step of each limit that costs anything would do, by solving again with the limit moved: a floor raised, a
/// ceiling lifted. In the order of the limits.
std::vector<ShadowPrice> shadow_prices(BlendProblem const& problem, Optimum const& optimum);

}  // namespace cropful::blends
