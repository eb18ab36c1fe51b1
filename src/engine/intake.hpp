#pragma once

#include <optional>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/rations.hpp"
#include "engine/nature.hpp"

namespace cropful::engine {

using namespace quantities;

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
    /// Whether the kind's table knows how much birds of this age eat; of those in lay it may not, and then the figures
    /// above are those of birds that still grow.
    [[nodiscard]] bool known(Duration age) const {
        return kind_.laying || !hatch_.laying_from || age < *hatch_.laying_from;
    }
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

/// Vessels are filled until past the end of a plan, and are empty by so long after it.
inline constexpr Duration look_ahead = days(60);

/// Throws NoAnswer where birds lay before `until` (an age) and how much they then eat is not known.
void need_laying_rate(domain::Hatch const& hatch, Kind const& kind, Duration until);

}  // namespace cropful::engine
