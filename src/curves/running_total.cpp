#include "cropful/curves/running_total.hpp"

#include <math.h>

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <limits>

namespace cropful::curves {

namespace {

/// 7 points: exact for polynomials up to degree 13; the product of two cubics has degree 6.
using Gauss = boost::math::quadrature::gauss<double, 7>;

double integral(std::function<double(double)> const& rate, double from, double to) {
    return from < to ? Gauss::integrate(rate, from, to) : 0.0;
}

}  // namespace

RunningTotal::RunningTotal(std::function<double(double)> rate, std::vector<double> breaks)
    : rate_(std::move(rate)), breaks_(std::move(breaks)) {
    std::sort(breaks_.begin(), breaks_.end());
    breaks_.erase(std::unique(breaks_.begin(), breaks_.end()), breaks_.end());
    totals_.reserve(breaks_.size());
    totals_.push_back(0);
    for (std::size_t i = 1; i < breaks_.size(); ++i) {
        totals_.push_back(totals_.back() + integral(rate_, breaks_[i - 1], breaks_[i]));
    }
}

double RunningTotal::up_to(double age) const {
    auto const after = std::upper_bound(breaks_.begin(), breaks_.end(), age);
    if (after == breaks_.begin()) return 0;
    auto const i = static_cast<std::size_t>(after - breaks_.begin()) - 1;
    return totals_[i] + integral(rate_, breaks_[i], age);
}

double RunningTotal::between(double from, double to) const { return up_to(to) - up_to(from); }

double RunningTotal::reached(double from, double amount) const {
    double const goal = up_to(from) + amount;
    auto const after = std::lower_bound(totals_.begin(), totals_.end(), goal);
    if (after == totals_.end()) {
        double const steady = rate_(breaks_.back() + 1);
        double const last = std::max(from, breaks_.back());
        return steady > 0 ? last + (goal - up_to(last)) / steady : std::numeric_limits<double>::infinity();
    }
    auto const i = static_cast<std::size_t>(after - totals_.begin());
    double const low = i == 0 ? from : std::max(from, breaks_[i - 1]);
    double const high = breaks_[i];
    if (amount <= 0 || low >= high) return low;
    auto const missing = [&](double age) { return up_to(age) - goal; };
    std::uintmax_t steps = 100;
    auto const root = boost::math::tools::toms748_solve(missing, low, high, up_to(low) - goal, totals_[i] - goal,
                                                        boost::math::tools::eps_tolerance<double>(50), steps);
    return (root.first + root.second) / 2;
}

}  // namespace cropful::curves
