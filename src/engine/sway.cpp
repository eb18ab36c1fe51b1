#include "engine/sway.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/whole.hpp"

namespace cropful::engine {

Sway::Place Sway::place(double score) {
    constexpr double last = 2.0 * Spread::each_side - 1e-9;
    double const at = std::clamp((score + Spread::farthest) / Spread::step, 0.0, last);
    auto const below = whole_number<std::size_t>(at);
    return {below, at - static_cast<double>(below)};
}

Sway::Place Sway::hatched(double score) const {
    auto const& steps = spread_.hatched();
    double const at = spread_.hatched(score);
    auto const above = std::upper_bound(steps.begin(), steps.end(), at);
    if (above == steps.begin()) return {0, 0};
    if (above == steps.end()) return {steps.size() - 1, 0};
    auto const below = static_cast<std::size_t>(above - steps.begin()) - 1;
    return {below, (at - steps[below]) / (steps[below + 1] - steps[below])};
}

Sway::Sway(Spread const& spread, Belief const& belief, Draws const& draws, std::size_t flock) : spread_(spread) {
    double const feed_mean = belief.score(flock, Belief::Trait::feed).mean;
    double const water_mean = belief.score(flock, Belief::Trait::water).mean;
    double const water_sd = spread.central().water_sd();
    auto const hatching = draws.hatching(flock);
    for (std::size_t world = 0; world < draws.points(); ++world) {
        appetite_.push_back(draws.feed(flock)[world] - feed_mean);
        deaths_.push_back(place(draws.deaths(flock)[world]));
        hatched_.push_back(hatching.empty() ? Place{0, 0} : hatched(hatching[world]));
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
        double const alive = hatched_[world].between([&](std::size_t rate) {
            return deaths_[world].between([&](std::size_t deaths) { return heads[rate * Spread::scores + deaths]; });
        });
        factors[world] = std::exp(appetite_[world] * sd) * alive;
    }
}

std::vector<double> Sway::read(ByScores const& figures) const {
    std::vector<double> read(worlds());
    for (std::size_t world = 0; world < worlds(); ++world) {
        Place const appetite = place(appetite_[world]);
        read[world] = hatched_[world].between([&](std::size_t rate) {
            return appetite.between([&](std::size_t eaten) {
                return deaths_[world].between([&](std::size_t deaths) { return figures[rate][eaten][deaths]; });
            });
        });
    }
    return read;
}

}  // namespace cropful::engine
