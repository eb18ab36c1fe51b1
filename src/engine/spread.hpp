#pragma once

#include <vector>

#include "engine/flock.hpp"
#include "engine/intake.hpp"

namespace cropful::engine {

using namespace quantities;

/// How the possible worlds move one flock's head count: by how many die and, where the hatch rate is not known, by how
/// many hatch.
class Spread {
  public:
    /// `central` is the flock's intake at the believed means; it must outlive the spread.
    Spread(domain::Hatch const& hatch, Kind const& kind, Intake const& central);
    /// Head counts over the central one at an age not below the hatch's first, at each of `hatched` in turn and within
    /// it at scores of deaths from -farthest in steps of `step`.
    [[nodiscard]] std::vector<double> heads(Duration age) const;
    /// Chicks over the central number of them; at least one, the last the most. Heads go straight from one to the next
    /// but where a removal leaves none.
    [[nodiscard]] std::vector<double> const& hatched() const { return hatched_; }
    /// The same at a score of the hatch rate.
    [[nodiscard]] double hatched(double score) const;
    [[nodiscard]] Intake const& central() const { return central_; }

    static constexpr double farthest = 5;
    static constexpr int each_side = 20;
    static constexpr double step = farthest / each_side;
    static constexpr std::size_t scores = 2 * each_side + 1;
    static constexpr double score(std::size_t i) { return step * static_cast<double>(i) - farthest; }
    /// Coefficient of variation of what a full hopper weighs; chosen here, no source.
    static constexpr double density_cv = 0.05;

  private:
    domain::Hatch const& hatch_;
    Kind const& kind_;
    Intake const& central_;
    Flock usual_;
    std::vector<double> hatched_;
    std::vector<Flock> flocks_;  // as `heads` gives them
};

}  // namespace cropful::engine
