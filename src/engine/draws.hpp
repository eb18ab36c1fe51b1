#pragma once

#include <span>
#include <vector>

#include "cropful/engine/belief.hpp"

namespace cropful::engine {

/// The same possible worlds on every run and every machine: Sobol points through the inverse normal. In each world
/// every flock has a score for its feed, its water, its deaths and the weight of its feed by volume; one of eggs whose
/// hatch rate is not known has one for that too.
class Draws {
  public:
    /// `points` is a power of two.
    explicit Draws(Belief const& belief, std::size_t points = Belief::usual_worlds);
    [[nodiscard]] std::size_t points() const { return points_; }
    [[nodiscard]] std::span<double const> feed(std::size_t flock) const { return column(4 * flock); }
    [[nodiscard]] std::span<double const> water(std::size_t flock) const { return column(4 * flock + 1); }
    [[nodiscard]] std::span<double const> deaths(std::size_t flock) const { return column(4 * flock + 2); }
    [[nodiscard]] std::span<double const> density(std::size_t flock) const { return column(4 * flock + 3); }
    /// Empty where the hatch rate is not in doubt.
    [[nodiscard]] std::span<double const> hatching(std::size_t flock) const {
        return hatching_[flock] == none ? std::span<double const>() : column(hatching_[flock]);
    }

  private:
    [[nodiscard]] std::span<double const> column(std::size_t i) const {
        return std::span(scores_).subspan(i * points_, points_);
    }
    void bend_to(Belief const& belief);
    /// Multiplies the row of these columns' scores by a lower factor, row by row.
    void mix(std::vector<double> const& root, std::vector<std::size_t> const& columns);
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    std::size_t points_;
    std::vector<std::size_t> hatching_;  // column of each flock
    std::vector<double> scores_;         // column by column
};

/// How many worlds a farm is judged in: the usual, a quarter of them for more than 250 flocks and an eighth for more
/// than 500, where all would take minutes and hundreds of megabytes. The sums of so many vary little from world to
/// world.
std::size_t worlds_for(std::size_t flocks);

/// `points` (a power of two) points of independent standard normal scores, column by column.
std::vector<double> sobol_normals(std::size_t points, std::size_t columns);

}  // namespace cropful::engine
