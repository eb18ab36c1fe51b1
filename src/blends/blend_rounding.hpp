#pragma once

#include "blends/blend_problem.hpp"

namespace cropful::blends {

using namespace quantities;

/// Amounts on the scale that keep the limits as well as whole steps can: single steps are moved from one ingredient of
/// the mix to another as long as that lessens the total by which the limits are missed, each in shares of itself.
std::vector<Mass> mended(BlendProblem const& problem, std::vector<Mass> const& amounts, Mass step);

}  // namespace cropful::blends
