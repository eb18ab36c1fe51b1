#pragma once

#include <optional>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/kind.hpp"
#include "engine/nature.hpp"

namespace cropful::engine {

/// What one bird of a hatch eats and drinks at each age.
class Intake {
  public:
    Intake(domain::Farm const& farm, domain::Hatch const& hatch, Kind const& kind, Nature nature = {});
    /// Feed used by a bird, ordinary spillage included, extra waste not. Age 0 and up.
    [[nodiscard]] MassPerBirdDay feed(Duration age) const;
    /// The same of a feed with this energy instead.
    [[nodiscard]] MassPerBirdDay feed_of_energy(Duration age, EnergyPerMass energy) const;
    /// Water drunk by a bird, spill not included.
    [[nodiscard]] VolumePerBirdDay water(Duration age) const;
    /// Standard deviation between flocks of the logarithm of the feed a bird uses, and of its ratio of water to feed.
    [[nodiscard]] double feed_sd(Duration age) const;
    [[nodiscard]] double water_sd() const;
    /// Ages (days) where either bends or jumps.
    [[nodiscard]] std::vector<double> breaks() const;
    /// Those of them where the spread between flocks bends.
    [[nodiscard]] std::vector<double> spread_breaks() const;
    [[nodiscard]] std::optional<Duration> laying_from() const { return hatch_.laying_from; }
    /// The feed eaten at an age.
    [[nodiscard]] domain::Feed const& eaten(Duration age) const;

  private:
    [[nodiscard]] bool laying(Duration age) const {
        return kind_.laying && hatch_.laying_from && age >= *hatch_.laying_from;
    }
    /// The energy of the diet that the intake table of this age stands for.
    [[nodiscard]] EnergyPerMass reference(Duration age) const;
    [[nodiscard]] double heat(HeatResponse const& response, Duration age, double sign) const;
    domain::Farm const& farm_;
    domain::Hatch const& hatch_;
    Kind const& kind_;
    Nature nature_;
};

}  // namespace cropful::engine
