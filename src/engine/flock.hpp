#pragma once

#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/rations.hpp"

namespace cropful::engine {

using namespace quantities;

/// What deaths take of a kind by an age, whatever the luck: the usual share, and the standard deviation of its
/// logarithm.
struct Toll {
    double dead;
    double log_sd;
};
Toll toll(Kind const& kind, Duration age);

/// How many birds of a hatch are alive at each age: the counted birds times survival since, less those removed; from a
/// diary's record on, what it says instead.
class Flock {
  public:
    /// How far a flock lies from the central tables of deaths and of the hatch rate, in standard scores.
    struct Luck {
        double deaths = 0;
        double hatching = 0;  // counts only where the rate is not known
        friend bool operator==(Luck const&, Luck const&) = default;
    };
    /// Throws NoAnswer when more birds are removed than are alive then; with other luck than the central, and where a
    /// diary has records, none are left.
    explicit Flock(domain::Hatch const& hatch, Kind const& kind, Luck luck = {0, 0});
    /// Birds at the hatch's first age: as stated, or as a diary counted them then.
    [[nodiscard]] Heads counted() const { return counted_; }
    /// Alive at `age`, after any removal at that very age. Ages below the first age give the birds counted.
    [[nodiscard]] Heads alive(Duration age) const;
    /// The same where the toll of that age, not below the first, is known already.
    [[nodiscard]] Heads alive(Duration age, Toll const& toll) const;
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
    [[nodiscard]] double survival(Toll const& toll) const;
    [[nodiscard]] Stretch const& stretch(Duration age) const;
    void start(Duration at, double heads);
    void remove(domain::Removal const& removal, domain::Hatch const& hatch);
    void record(domain::HeadRecord const& record);
    curves::Curve mortality_;
    Luck luck_;
    Heads counted_;
    std::vector<Stretch> stretches_;
    double known_ = 0;  // heads after the last record, less those planned to leave since: no table's deaths counted
};

/// Chicks of a hatch: as stated, or eggs times the hatch rate (the farm's, else the kind's, so many standard scores off
/// its central one but never more than all).
Heads chicks(domain::Hatch const& hatch, Kind const& kind, double score = 0);
/// Whether they depend on how many eggs hatch, and nobody has said.
bool rate_unknown(domain::Hatch const& hatch);

}  // namespace cropful::engine
