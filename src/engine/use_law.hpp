#pragma once

#include <array>
#include <optional>
#include <vector>

#include "cropful/engine/band.hpp"
#include "cropful/engine/belief.hpp"
#include "engine/flock.hpp"
#include "engine/usage.hpp"

namespace cropful::engine {

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
    /// Heads and spread are followed from `ages.from` on, to where none of them changes any more.
    UseLaw(domain::Hatch const& hatch, Kind const& kind, Terms terms, Belief const& belief, std::size_t flock,
           Ages ages);
    /// The chance that at least so much is used between two ages, of which the first is not below `ages.from`.
    [[nodiscard]] double chance(Duration from, Duration to, double amount) const;
    /// How long after `from` so much is gone in all but the lowest 5 %, the middle and the highest 5 % of worlds;
    /// absent where it never is. `about` is a guess.
    [[nodiscard]] Band<std::optional<Duration>> gone_after(Duration from, double amount,
                                                           std::optional<Duration> about) const;
    /// What is used between two ages; `about` is a guess above nought.
    [[nodiscard]] Band<double> used(Duration from, Duration to, double about) const;

  private:
    /// Use up to an age, and that times the weight of the feed score and times its square.
    using Moments = std::array<double, 3>;
    /// From one edge to the next.
    struct Step {
        double middle;    // age (d)
        double per_bird;  // kg or L
        double appetite;
    };
    /// One luck of the mixture.
    struct Course {
        double weight;
        std::vector<Moments> up_to;  // each of `edges_`
        [[nodiscard]] Moments at(std::size_t edge, double part) const;
    };
    struct Place {
        std::size_t edge;
        double part;  // of the use of one bird to the next edge; above 1 past the last
    };
    [[nodiscard]] Place place(Duration age) const;
    [[nodiscard]] double chance(Place const& start, Duration to, double amount) const;
    [[nodiscard]] double chance_of(Moments const& used, double log_amount) const;
    void add(Flock const& flock, double weight);
    Terms terms_;
    std::vector<double> edges_;
    std::vector<Step> steps_;
    std::vector<Course> courses_;
    double appetite_variance_;
    double covariance_;
    double thirst_variance_;
};

}  // namespace cropful::engine
