#include "cropful/curves/running_total.hpp"

#include <math.h>

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/special_functions/legendre.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <limits>

namespace cropful::curves {

namespace {

/// 10 points: with them the series is exact up to degree 9; the product of two cubics and a line has degree 7.
using Gauss = boost::math::quadrature::gauss<double, 10>;

template <class Series>
Series series(std::function<double(double)> const& rate, double from, double to) {
    double const middle = (from + to) / 2, half = (to - from) / 2;
    Series series{};
    auto const add = [&](double x, double weight) {
        double const value = weight * half * rate(middle + half * x);
        double last = 1, now = x;
        series[0] += value / 2;
        for (unsigned k = 1; k < series.size(); ++k) {
            series[k] += value * (2.0 * k + 1) / 2 * now;
            double const next = boost::math::legendre_next(k, x, now, last);
            last = now;
            now = next;
        }
    };
    for (std::size_t i = 0; i < Gauss::abscissa().size(); ++i) {
        add(Gauss::abscissa()[i], Gauss::weights()[i]);
        add(-Gauss::abscissa()[i], Gauss::weights()[i]);
    }
    return series;
}

/// The integral of the series from -1 to x: that of P_k is (P_k+1 - P_k-1) / (2 k + 1).
template <class Series>
double integral(Series const& series, double x) {
    double last = 1, now = x, sum = series[0] * (x + 1);
    for (unsigned k = 1; k < series.size(); ++k) {
        double const next = ((2.0 * k + 1) * x * now - k * last) / (k + 1.0);
        sum += series[k] / (2.0 * k + 1) * (next - last);
        last = now;
        now = next;
    }
    return sum;
}

}  // namespace

RunningTotal::RunningTotal(std::function<double(double)> const& rate, std::vector<double> breaks)
    : breaks_(std::move(breaks)) {
    std::sort(breaks_.begin(), breaks_.end());
    breaks_.erase(std::unique(breaks_.begin(), breaks_.end()), breaks_.end());
    totals_.push_back(0);
    for (std::size_t i = 1; i < breaks_.size(); ++i) {
        pieces_.push_back(series<Series>(rate, breaks_[i - 1], breaks_[i]));
        totals_.push_back(totals_.back() + 2 * pieces_.back()[0]);
    }
    steady_ = rate(breaks_.back() + 1);
}

double RunningTotal::up_to(double age) const {
    auto const after = std::upper_bound(breaks_.begin(), breaks_.end(), age);
    if (after == breaks_.begin()) return 0;
    if (after == breaks_.end()) return totals_.back() + steady_ * (age - breaks_.back());
    auto const i = static_cast<std::size_t>(after - breaks_.begin()) - 1;
    return totals_[i] + integral(pieces_[i], 2 * (age - breaks_[i]) / (breaks_[i + 1] - breaks_[i]) - 1);
}

double RunningTotal::between(double from, double to) const { return up_to(to) - up_to(from); }

double RunningTotal::reached(double from, double amount) const {
    double const goal = up_to(from) + amount;
    auto const after = std::lower_bound(totals_.begin(), totals_.end(), goal);
    if (after == totals_.end()) {
        double const last = std::max(from, breaks_.back());
        return steady_ > 0 ? last + (goal - up_to(last)) / steady_ : std::numeric_limits<double>::infinity();
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
