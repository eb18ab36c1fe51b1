#pragma once

#include <map>
#include <optional>
#include <vector>

#include "cropful/engine/band.hpp"
#include "cropful/engine/belief.hpp"
#include "engine/flock.hpp"
#include "engine/usage.hpp"

namespace cropful::engine {

using namespace quantities;

/// Between two ages.
struct Ages {
    Duration from;
    Duration to;
};

/// The law of what one flock uses of feed or water between any two ages, in kg or L. With given luck in deaths and
/// hatching its logarithm is normal, but for how the spread of appetites changes meanwhile; the law is the mixture over
/// that luck.
class UseLaw {
  public:
    /// What one flock is asked about. `per_bird` is the central use of one bird (kg or L), `appetite` of its feed score
    /// the weight at an age (d); `thirst` that of the water score, 0 for feed; `measure_sd` is of the logarithm of
    /// what a vessel holds.
    struct Terms {
        Use per_bird;
        Factor appetite;
        double thirst = 0;
        double measure_sd = 0;
        std::vector<double> breaks;  // ages (d) at which use, heads or their spread bend or jump
    };
    /// Heads and spread are followed from an age on, to where none of them changes any more.
    UseLaw(domain::Hatch const& hatch, Kind const& kind, Terms terms, Belief const& belief, std::size_t flock,
           Duration first);
    /// The chance that at least so much is used between two ages, of which the first is not below that one.
    [[nodiscard]] double chance(Duration from, Duration to, double amount) const;
    /// How long after `from` so much is gone in all but the lowest 5 %, the middle and the highest 5 % of worlds;
    /// absent where it never is. `about` is a guess. An answer is kept: it is asked for at a fill, before it and after
    /// it.
    [[nodiscard]] Band<std::optional<Duration>> gone_after(Duration from, double amount,
                                                           std::optional<Duration> about) const;
    /// What is used between two ages; `about` is a guess above nought.
    [[nodiscard]] Band<double> used(Duration from, Duration to, double about) const;

  private:
    /// From one edge to the next.
    struct Step {
        Duration middle;  // age
        Toll toll;
        double per_bird;  // kg or L
        double appetite;
    };
    struct Place {
        std::size_t edge;
        double part;  // of the use of one bird to the next edge; above 1 past the last
    };
    static constexpr std::size_t moments = 3;
    void follow(std::vector<Flock> const& flocks);
    [[nodiscard]] Place place(Duration age) const;
    [[nodiscard]] double chance(Place const& start, Duration to, double amount) const;
    Terms terms_;
    std::vector<double> edges_;
    std::vector<Step> steps_;
    std::vector<double> weights_;  // of each luck of the mixture
    /// At each edge in turn: the use up to it in each luck, then that times the weight of the feed score, then times
    /// its square.
    std::vector<double> up_to_;
    double appetite_variance_;
    double covariance_;
    double thirst_variance_;
    double sd_;  // of the logarithm of use in one luck, at the age where it is least
    mutable std::map<std::pair<double, double>, Band<std::optional<Duration>>> gone_;  // by age in days and amount
};

}  // namespace cropful::engine
