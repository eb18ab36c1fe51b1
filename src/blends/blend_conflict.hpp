#pragma once

#include "blends/blend_problem.hpp"

/// Why limits that the nearest mix misses cannot be kept.
namespace cropful::blends {

/// Whether one of the ingredients, alone, would keep a limit.
bool within_reach(BlendProblem const& problem, std::size_t limit);

/// Limits that can all be kept, but not together with one that was missed; without any of them they can (deletion
/// filter, Chinneck and Dravnieks 1991, ORSA J. Computing 3:157-168, from memory). Those that the nearest mix keeps
/// come first. Empty for a limit out of reach, and for one that is missed only so that others are missed by less.
std::vector<std::size_t> clashing_with(BlendProblem const& problem, std::size_t limit, std::vector<bool> const& missed);

}  // namespace cropful::blends
