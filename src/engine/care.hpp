#pragma once

#include <map>
#include <string>

#include "cropful/engine/plan.hpp"

namespace cropful::engine {

class HatchModel;

/// Adds to a hatch's plan, whose feeds are there, where it lives and what is filled, changed and stirred in meanwhile.
/// `hunger` is what the farm's hungry flock eats of each feed over the usual one. With `now` the diary's levels count.
void add_care(HatchPlan& plan, Season const& season, HatchModel const& model,
              std::map<std::string, double> const& hunger, std::optional<Moment> now, Wanted const& wanted);

}  // namespace cropful::engine
