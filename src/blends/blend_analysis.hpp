#pragma once

#include "blends/blend_problem.hpp"

namespace cropful::blends {

/// Every nutrient with a limit, or stated by something in the mix, at these shares. `exact` are the shares before
/// rounding: a limit kept by them and missed by `weighed` is missed by rounding.
std::vector<BlendFinding> findings(BlendProblem const& problem, std::vector<double> const& exact,
                                   std::vector<double> const& weighed);

/// Built-in ceilings a mix is above: those the owner's own figures set aside; of a given mix all.
std::vector<BlendClash> not_kept(BlendProblem const& problem, std::vector<double> const& shares, bool given);

/// Limits on ingredients that a mix misses by more than `slack` of them.
std::vector<BlendClash> shares_missed(BlendProblem const& problem, std::vector<double> const& shares, double slack);

/// The level a limit asks of a mix: its own, or scaled to the mix's energy.
double level_asked(BlendLimit const& limit, std::vector<Ingredient> const& ingredients,
                   std::vector<double> const& shares);

}  // namespace cropful::blends
