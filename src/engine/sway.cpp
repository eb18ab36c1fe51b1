#include "engine/sway.hpp"

#include <algorithm>
#include <cmath>

namespace cropful::engine {

Sway::Sway(Spread const& spread, Belief const& belief, Draws const& draws, std::size_t flock) : spread_(spread) {
    double const feed_mean = belief.score(flock, Belief::Trait::feed).mean;
    double const water_mean = belief.score(flock, Belief::Trait::water).mean;
    double const water_sd = spread.central().water_sd();
    constexpr double last_place = 2.0 * Spread::each_side - 1e-9;
    for (std::size_t world = 0; world < draws.points(); ++world) {
        appetite_.push_back(draws.feed(flock)[world] - feed_mean);
        double const place = (draws.deaths(flock)[world] + Spread::farthest) / Spread::step;
        deaths_.push_back(std::clamp(place, 0.0, last_place));
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
        auto const below = static_cast<std::size_t>(deaths_[world]);
        double const part = deaths_[world] - static_cast<double>(below);
        double const alive = heads[below] + part * (heads[below + 1] - heads[below]);
        factors[world] = std::exp(appetite_[world] * sd) * alive;
    }
}

}  // namespace cropful::engine
