#pragma once

#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/kind.hpp"

namespace cropful::engine {

/// How many birds of a hatch are alive at each age: the counted birds times survival since, less those removed.
class Flock {
  public:
    /// Throws NoAnswer when more birds are removed than are alive then.
    Flock(domain::Hatch const& hatch, Kind const& kind);
    /// Birds counted at the hatch's first age.
    [[nodiscard]] Heads counted() const { return counted_; }
    /// Alive at `age`, after any removal at that very age. Ages below the first age give the birds counted.
    [[nodiscard]] Heads alive(Duration age) const;
    /// Ages (days) where the head count bends or jumps.
    [[nodiscard]] std::vector<double> breaks() const;

  private:
    struct Stretch {
        Duration from;
        double per_survivor;  // birds per unit of survival since hatch
    };
    [[nodiscard]] double survival(Duration age) const;
    curves::Curve mortality_;
    Heads counted_;
    std::vector<Stretch> stretches_;
};

/// Chicks of a hatch: as stated, or eggs times the hatch rate (the farm's, else the kind's).
Heads chicks(domain::Hatch const& hatch, Kind const& kind);

}  // namespace cropful::engine
