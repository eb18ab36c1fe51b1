#pragma once

#include <array>
#include <vector>

#include "engine/draws.hpp"
#include "engine/spread.hpp"

namespace cropful::engine {

using namespace quantities;

/// A figure at each of `Spread::hatched` in turn, within it at each score of appetite (over its mean), and within that
/// at each of deaths.
using ByScores = std::vector<std::array<std::array<double, Spread::scores>, Spread::scores>>;

/// How the possible worlds move one flock off its central course: a factor for every world.
class Sway {
  public:
    /// The spread and the draws must outlive the sway.
    Sway(Spread const& spread, Belief const& belief, Draws const& draws, std::size_t flock);
    /// What the whole flock uses of feed at an age over its central use; water too but for `water`.
    void feed(Duration age, std::vector<double>& factors) const;
    /// The figure in every world, straight between scores: true to 1e-3.
    [[nodiscard]] std::vector<double> read(ByScores const& figures) const;
    /// The ratio of water to feed, and what a hopper holds by weight, over their central values. They do not change
    /// with age.
    [[nodiscard]] std::vector<double> water() const;
    [[nodiscard]] std::vector<double> room() const;
    [[nodiscard]] std::size_t worlds() const { return appetite_.size(); }

  private:
    /// A step of some steps through a figure, and the part of it gone on to the next.
    struct Place {
        std::size_t below;
        double part;
        template <class Figure>
        [[nodiscard]] double between(Figure const& figure) const {
            return part == 0 ? figure(below) : figure(below) + part * (figure(below + 1) - figure(below));
        }
    };
    static Place place(double score);
    /// A figure in a world, where `of(rate, deaths)` is its share at a step of each.
    template <class Figure>
    [[nodiscard]] double in_world(std::size_t world, Figure const& of) const {
        auto const at = [&](std::size_t rate) {
            return deaths_[world].between([&](std::size_t deaths) { return of(rate, deaths); });
        };
        return hatched_.empty() ? at(0) : hatched_[world].between(at);
    }
    [[nodiscard]] Place hatched(double score) const;

    Spread const& spread_;
    Draws const& draws_;
    std::size_t flock_;
    double water_mean_;
    std::vector<double> appetite_;  // feed scores less their mean
    std::vector<Place> deaths_;     // among the scores `Spread` steps through
    std::vector<Place> hatched_;    // among `Spread::hatched`; empty where there is one
};

}  // namespace cropful::engine
