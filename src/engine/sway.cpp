#include "engine/sway.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/whole.hpp"

namespace cropful::engine {

namespace {

/// A score as a place among those `Spread` steps through.
double place(double score) {
    constexpr double last = 2.0 * Spread::each_side - 1e-9;
    return std::clamp((score + Spread::farthest) / Spread::step, 0.0, last);
}

/// The place before, and the part of a step from there.
struct Between {
    explicit Between(double place)
        : below(whole_number<std::size_t>(place)), part(place - static_cast<double>(below)) {}
    std::size_t below;
    double part;
    template <class Values>
    double of(Values const& values) const {
        return values[below] + part * (values[below + 1] - values[below]);
    }
};

}  // namespace

Sway::Sway(Spread const& spread, Belief const& belief, Draws const& draws, std::size_t flock) : spread_(spread) {
    double const feed_mean = belief.score(flock, Belief::Trait::feed).mean;
    double const water_mean = belief.score(flock, Belief::Trait::water).mean;
    double const water_sd = spread.central().water_sd();
    for (std::size_t world = 0; world < draws.points(); ++world) {
        appetite_.push_back(draws.feed(flock)[world] - feed_mean);
        deaths_.push_back(place(draws.deaths(flock)[world]));
        water_.push_back(std::exp((draws.water(flock)[world] - water_mean) * water_sd));
        room_.push_back(std::exp(draws.density(flock)[world] * Spread::density_cv));
    }
}

/// Between two scores of deaths the head count goes straight: true to 1e-3 of it.
void Sway::feed(Duration age, std::vector<double>& factors) const {
    auto const heads = spread_.heads(age);
    double const sd = spread_.central().feed_sd(age);
    factors.resize(worlds());
    for (std::size_t world = 0; world < worlds(); ++world) {
        factors[world] = std::exp(appetite_[world] * sd) * Between(deaths_[world]).of(heads);
    }
}

std::vector<double> Sway::read(ByScores const& figures) const {
    std::vector<double> read(worlds());
    for (std::size_t world = 0; world < worlds(); ++world) {
        Between const appetite(place(appetite_[world])), deaths(deaths_[world]);
        double const low = deaths.of(figures[appetite.below]), high = deaths.of(figures[appetite.below + 1]);
        read[world] = low + appetite.part * (high - low);
    }
    return read;
}

}  // namespace cropful::engine
