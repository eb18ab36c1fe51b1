#pragma once

#include <vector>

#include "cropful/engine/away.hpp"
#include "engine/instant.hpp"

namespace cropful::engine {

/// A holding and when it is empty in each world, in days after the absence begins.
struct Followed {
    Holding holding;
    std::vector<double> empty;
};

/// Follows a hatch's hoppers and drinkers through an absence, between ages of the hatch, in every world of the season.
void follow_hatch(Season const& season, std::size_t number, Ages ages, Absence const& absence,
                  std::vector<Followed>& all);

}  // namespace cropful::engine
