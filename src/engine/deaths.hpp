#pragma once

#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/rations.hpp"

namespace cropful::engine {

/// Of one flock: how likely at least so many deaths among `birds` are between two ages, given the table, the doubt
/// about it and chance.
double chance_of_deaths(Kind const& kind, Duration from, Duration to, double birds, double deaths);

/// Hatches of which more birds have died since the last count but one than the table with its doubt allows 1 time in
/// 200. A caution each.
std::vector<domain::Caution> too_many_deaths(domain::Farm const& farm, Rations const& rations);

}  // namespace cropful::engine
