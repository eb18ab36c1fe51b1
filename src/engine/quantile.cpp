#include "engine/quantile.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/whole.hpp"

namespace cropful::engine {

namespace {

using Place = std::vector<double>::iterator;

/// Order statistics from `first` on are known to be no less than those before it.
double between(std::vector<double>& sample, Place first, double share) {
    double const last = static_cast<double>(sample.size() - 1);
    double const rank = std::clamp(share * static_cast<double>(sample.size()) - 0.5, 0.0, last);
    auto const low = sample.begin() + quantities::whole_number<std::ptrdiff_t>(rank);
    std::nth_element(std::min(first, low), low, sample.end());
    double const part = rank - std::floor(rank);
    if (part == 0 || low + 1 == sample.end()) return *low;
    double const next = *std::min_element(low + 1, sample.end());
    return std::isinf(next) ? (part < 0.5 ? *low : next) : *low + part * (next - *low);
}

}  // namespace

double quantile(std::vector<double>& sample, double share) { return between(sample, sample.begin(), share); }

Band<double> band(std::vector<double>& sample) {
    auto const at = [&](double share) {
        return sample.begin() + quantities::whole_number<std::ptrdiff_t>(share * static_cast<double>(sample.size()));
    };
    Band<double> band;
    band.p05 = between(sample, sample.begin(), 0.05);
    band.p50 = between(sample, at(0.05), 0.50);
    band.p95 = between(sample, at(0.50), 0.95);
    return band;
}

}  // namespace cropful::engine
