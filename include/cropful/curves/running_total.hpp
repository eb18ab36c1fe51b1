#pragma once

#include <array>
#include <functional>
#include <vector>

#include "cropful/quantities/make.hpp"

namespace cropful::curves {

/// The running total of a rate that is smooth between breaks and constant after the last. On each piece the rate is
/// its Legendre series through the 10 Gauss points: exact for polynomials up to degree 9.
class RunningTotal {
  public:
    /// `rate` in amount per day at an age in days; `breaks` in any order, at least one; totals start at the first.
    RunningTotal(std::function<double(double)> const& rate, std::vector<double> breaks);
    [[nodiscard]] double between(double from, double to) const;
    /// Age at which `amount` more has been used since `from`; infinity when it never is.
    [[nodiscard]] double reached(double from, double amount) const;

  private:
    static constexpr std::size_t terms = 10;
    using Series = std::array<double, terms>;
    [[nodiscard]] double up_to(double age) const;
    std::vector<double> breaks_;
    std::vector<double> totals_;  // at each break
    std::vector<Series> pieces_;  // of the rate between a break and the next, times half its length
    double steady_;               // rate after the last break
};

}  // namespace cropful::curves
