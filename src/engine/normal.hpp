#pragma once

#include <boost/math/special_functions/erf.hpp>
#include <numbers>

/// The standard normal distribution, one score at a time; normal_scores.hpp has many.
namespace cropful::engine {

/// The score below which lies this chance, which is above 0 and below 1.
inline double score_at(double chance) {
    using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
    return -std::numbers::sqrt2 * boost::math::erfc_inv(2 * chance, InDouble());
}

}  // namespace cropful::engine
