#include "engine/spread.hpp"

#include <math.h>

#include <algorithm>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <numbers>
#include <numeric>

#include "cropful/curves/curve.hpp"

namespace cropful::engine {

namespace {

double normal_below(double score) { return std::erfc(-score / std::numbers::sqrt2) / 2; }

/// The point below which a share of a weighted mixture of normal laws of one sd lies, by Newton's method from the point
/// of a normal law with the same mean and variance, `score` standard deviations off.
double mixture_point(std::vector<double> const& means, std::vector<double> const& weights, double sd, double score) {
    double const share = normal_below(score);
    double const mean = std::inner_product(means.begin(), means.end(), weights.begin(), 0.0);
    double variance = sd * sd;
    for (std::size_t i = 0; i < means.size(); ++i) variance += weights[i] * (means[i] - mean) * (means[i] - mean);
    auto const excess = [&](double point) {
        double below = 0, density = 0;
        for (std::size_t i = 0; i < means.size(); ++i) {
            double const z = (point - means[i]) / sd;
            below += weights[i] * normal_below(z);
            density += weights[i] * std::exp(-z * z / 2);
        }
        return std::pair(below - share, density / (sd * std::sqrt(2 * std::numbers::pi)));
    };
    auto const [lowest, highest] = std::minmax_element(means.begin(), means.end());
    double const reach = 2 * curves::score_95 * sd;
    std::uintmax_t steps = 60;
    return boost::math::tools::newton_raphson_iterate(excess, mean + score * std::sqrt(variance), *lowest - reach,
                                                      *highest + reach, 30, steps);
}

}  // namespace

Spread::Spread(domain::Hatch const& hatch, Kind const& kind, Intake const& central, Belief const& belief,
               std::size_t flock)
    : central_(central), belief_(belief), flock_(flock) {
    for (int i = -each_side; i <= each_side; ++i) {
        flocks_.emplace_back(hatch, kind, step * i);
        weights_.push_back(std::exp(-0.5 * (step * i) * (step * i)));
    }
    double const sum = std::accumulate(weights_.begin(), weights_.end(), 0.0);
    for (double& weight : weights_) weight /= sum;
}

std::vector<double> Spread::heads(Duration age) const {
    double const central = in_birds(flocks_[each_side].alive(age));
    std::vector<double> heads;
    for (Flock const& flock : flocks_) heads.push_back(central > 0 ? in_birds(flock.alive(age)) / central : 0);
    return heads;
}

Band<double> Spread::feed_band(Duration age) const {
    return band(age, belief_.expected({flock_, central_.feed_sd(age), 0}).variance);
}

Band<double> Spread::hopper_band(Duration age) const {
    return band(age, belief_.expected({flock_, central_.feed_sd(age), 0}).variance + density_cv * density_cv);
}

Band<double> Spread::water_band(Duration age) const {
    return band(age, belief_.expected({flock_, central_.feed_sd(age), central_.water_sd()}).variance);
}

Band<double> Spread::band(Duration age, double variance) const {
    constexpr double fewest = 1e-12;  // of the central head count: a flock of none
    constexpr double least_sd = 1e-12;
    std::vector<double> means = heads(age);
    for (double& mean : means) mean = std::log(std::max(mean, fewest));
    double const sd = std::max(std::sqrt(variance), least_sd);
    auto const at = [&](double score) { return std::exp(mixture_point(means, weights_, sd, score)); };
    return {at(-curves::score_95), at(0), at(curves::score_95)};
}

}  // namespace cropful::engine
