#pragma once

#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/quantities.hpp"
#include "engine/by_age.hpp"

namespace cropful::engine {

class HatchModel;

/// A stage of a hatch's life between two ages, and how many houses it takes.
struct Lodging {
    domain::Stage stage;
    Duration from;
    Duration to;
    int houses = 1;   // 1 too where no house is named
    double sure = 1;  // birds at its start to be sure, over those of the usual flock
    [[nodiscard]] int hoppers() const { return stage.hoppers * houses; }
    [[nodiscard]] int drinkers() const { return stage.drinkers * houses; }
};

/// The stages of a hatch in order of age; each takes as many houses as hold the birds of its start to be sure (19 times
/// in 20), unless the farm fixes it.
std::vector<Lodging> lodgings(domain::Farm const& farm, HatchModel const& model);

/// The one at an age; null where there is none.
Lodging const* lodging_at(std::vector<Lodging> const& lodgings, Duration age);

/// Feed wasted beyond the ordinary, and water spilt, shares by age: those of the vessels of each stage.
ByAge extra_waste(domain::Farm const& farm, domain::Hatch const& hatch);
ByAge spill(domain::Farm const& farm, domain::Hatch const& hatch);

}  // namespace cropful::engine
