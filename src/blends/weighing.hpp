#pragma once

#include <vector>

#include "cropful/quantities/make.hpp"

namespace cropful::blends {

/// Shares of a batch as whole steps of the scale that add up to it: what is left goes to the largest remainders, the
/// earlier first. A batch that is no whole number of steps becomes the nearest that is.
std::vector<quantities::Mass> weigh(std::vector<double> const& shares, quantities::Mass batch, quantities::Mass step);

}  // namespace cropful::blends
