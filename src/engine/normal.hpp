#pragma once

#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <numbers>

/// The standard normal distribution.
namespace cropful::engine {

/// The chance of a score below this one.
inline double normal_below(double score) { return std::erfc(-score / std::numbers::sqrt2) / 2; }

/// The score below which lies this chance, which is above 0 and below 1.
inline double score_at(double chance) {
    using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
    return -std::numbers::sqrt2 * boost::math::erfc_inv(2 * chance, InDouble());
}

}  // namespace cropful::engine
