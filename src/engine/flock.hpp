#pragma once

#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/kind.hpp"

namespace cropful::engine {

/// How many birds of a hatch are alive at each age: the counted birds times survival since, less those removed; from a
/// diary's record on, what it says instead.
class Flock {
  public:
    /// `score` is how far deaths lie from the central table, in standard scores. Throws NoAnswer when more birds are
    /// removed than are alive then; at another score than 0, and where a diary has records, none are left.
    Flock(domain::Hatch const& hatch, Kind const& kind, double score = 0);
    /// Birds counted at the hatch's first age.
    [[nodiscard]] Heads counted() const { return counted_; }
    /// Alive at `age`, after any removal at that very age. Ages below the first age give the birds counted.
    [[nodiscard]] Heads alive(Duration age) const;
    /// Ages (days) where the head count bends or jumps.
    [[nodiscard]] std::vector<double> breaks() const;
    /// Those of them where it jumps.
    [[nodiscard]] std::vector<double> jumps() const;

  private:
    struct Stretch {
        Duration from;
        double per_survivor;  // birds per unit of survival since hatch
    };
    [[nodiscard]] double survival(Duration age) const;
    void start(Duration at, double heads);
    void remove(domain::Removal const& removal, domain::Hatch const& hatch);
    void record(domain::HeadRecord const& record);
    curves::Curve mortality_;
    double score_;
    Heads counted_;
    std::vector<Stretch> stretches_;
    double known_ = 0;  // heads right after the last removal or record
};

/// Chicks of a hatch: as stated, or eggs times the hatch rate (the farm's, else the kind's).
Heads chicks(domain::Hatch const& hatch, Kind const& kind);

}  // namespace cropful::engine
