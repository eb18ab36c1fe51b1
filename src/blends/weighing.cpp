#include "blends/weighing.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace cropful::blends {

using namespace quantities;

std::vector<Mass> weigh(std::vector<double> const& shares, Mass batch, Mass step) {
    constexpr double guard = 1e-9;  // steps; what arithmetic may take from a whole one
    double const total = std::accumulate(shares.begin(), shares.end(), 0.0);
    double const steps = std::round(ratio(batch / step) * total);
    std::vector<double> whole, rest;
    for (double const share : shares) {
        double const exact = steps * share / total;
        whole.push_back(std::floor(exact + guard));
        rest.push_back(exact - whole.back());
    }
    double left = steps - std::accumulate(whole.begin(), whole.end(), 0.0);
    while (left >= 1) {
        auto const most = std::max_element(rest.begin(), rest.end());
        whole[static_cast<std::size_t>(most - rest.begin())] += 1;
        *most = -1;
        left -= 1;
    }
    std::vector<Mass> amounts;
    for (double const count : whole) amounts.push_back(step * count);
    return amounts;
}

}  // namespace cropful::blends
