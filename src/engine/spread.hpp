#pragma once

#include <vector>

#include "cropful/engine/band.hpp"
#include "cropful/engine/belief.hpp"
#include "engine/flock.hpp"
#include "engine/intake.hpp"

namespace cropful::engine {

/// How far one flock's use may lie from its central course. The logarithm of use per bird is normal; the head count is
/// a function of one normal score.
class Spread {
  public:
    /// `central` is the flock's intake at the means of `belief`; both must outlive the spread.
    Spread(domain::Hatch const& hatch, Kind const& kind, Intake const& central, Belief const& belief,
           std::size_t flock);
    /// The whole flock's use of feed at an age over its central use.
    [[nodiscard]] Band<double> feed_band(Duration age) const;
    /// The same against a hopper whose content is itself uncertain.
    [[nodiscard]] Band<double> hopper_band(Duration age) const;
    [[nodiscard]] Band<double> water_band(Duration age) const;
    /// Head counts over the central one, at scores of deaths from -farthest in steps of `step`.
    [[nodiscard]] std::vector<double> heads(Duration age) const;
    [[nodiscard]] Intake const& central() const { return central_; }

    static constexpr double farthest = 5;
    static constexpr int each_side = 20;
    static constexpr double step = farthest / each_side;
    static constexpr std::size_t scores = 2 * each_side + 1;
    static constexpr double score(std::size_t i) { return step * static_cast<double>(i) - farthest; }
    /// Coefficient of variation of what a full hopper weighs; chosen here, no source.
    static constexpr double density_cv = 0.05;

  private:
    [[nodiscard]] Band<double> band(Duration age, double variance) const;
    Intake const& central_;
    Belief const& belief_;
    std::size_t flock_;
    std::vector<Flock> flocks_;
    std::vector<double> weights_;  // of the scores, normal, adding up to 1
};

}  // namespace cropful::engine
