#include "engine/sway.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/whole.hpp"
#include "engine/arrays.hpp"

namespace cropful::engine {

using namespace quantities;

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

Sway::Sway(Spread const& spread, Belief const& belief, Draws const& draws, std::size_t flock)
    : spread_(spread),
      draws_(draws),
      flock_(flock),
      water_mean_(belief.score(flock, Belief::Trait::water).mean),
      appetite_(draws.feed(flock).begin(), draws.feed(flock).end()) {
    numbers(appetite_.data(), worlds()) -= belief.score(flock, Belief::Trait::feed).mean;
    deaths_.reserve(worlds());
    for (double const score : draws.deaths(flock)) deaths_.push_back(place(score));
    for (double const score : draws.hatching(flock)) hatched_.push_back(hatched(score));
}

std::vector<double> Sway::water() const {
    std::vector<double> water(worlds());
    double const sd = spread_.central().water_sd();
    auto const scores = numbers(draws_.water(flock_).data(), worlds());
    numbers(water.data(), worlds()) = ((scores - water_mean_) * sd).exp();
    return water;
}

std::vector<double> Sway::room() const {
    std::vector<double> room(worlds());
    auto const scores = numbers(draws_.density(flock_).data(), worlds());
    numbers(room.data(), worlds()) = (scores * Spread::density_cv).exp();
    return room;
}

/// Between two scores of deaths the head count goes straight: true to 1e-3 of it.
void Sway::feed(Duration age, std::vector<double>& factors) const {
    auto const heads = spread_.heads(age);
    auto const share = [&](std::size_t rate, std::size_t deaths) { return heads[rate * Spread::scores + deaths]; };
    double const sd = spread_.central().feed_sd(age);
    factors.resize(worlds());
    few_by_few(worlds(), [&](std::size_t from, std::size_t many) {
        auto some = numbers(&factors[from], many);
        for (std::size_t world = from; world < from + many; ++world) factors[world] = in_world(world, share);
        some *= (numbers(&appetite_[from], many) * sd).exp();
    });
}

std::vector<double> Sway::read(ByScores const& figures) const {
    std::vector<double> read(worlds());
    for (std::size_t world = 0; world < worlds(); ++world) {
        Place const appetite = place(appetite_[world]);
        read[world] = in_world(world, [&](std::size_t rate, std::size_t deaths) {
            return appetite.between([&](std::size_t eaten) { return figures[rate][eaten][deaths]; });
        });
    }
    return read;
}

}  // namespace cropful::engine
