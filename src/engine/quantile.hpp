#pragma once

#include <vector>

#include "cropful/engine/band.hpp"

namespace cropful::engine {

/// The value below which a share of the sample lies, between order statistics i and i + 1 at (i + 1/2) / n.
/// Reorders the sample, which must not be empty; infinities are allowed.
double quantile(std::vector<double>& sample, double share);
Band<double> band(std::vector<double>& sample);

}  // namespace cropful::engine
