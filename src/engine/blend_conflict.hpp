#pragma once

#include "engine/blend_problem.hpp"

/// Why limits that the nearest mix misses cannot be kept.
namespace cropful::engine {

/// Whether one of the ingredients, alone, would keep a limit.
bool within_reach(BlendProblem const& problem, std::size_t limit);

/// Limits that cannot all be kept beside one that was missed; the rest can be kept with it if any of them gives way
/// (Chinneck and Dravnieks 1991, ORSA J. Computing 3:157-168, deletion filter). Those that the nearest mix keeps come
/// first; other missed ones are named only where the kept ones do not explain it. Empty for a limit out of reach.
std::vector<std::size_t> clashing_with(BlendProblem const& problem, std::size_t limit, std::vector<bool> const& missed);

}  // namespace cropful::engine
