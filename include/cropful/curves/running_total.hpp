#pragma once

#include <functional>
#include <vector>

#include "cropful/quantities/make.hpp"

namespace cropful::curves {

/// The running total of a rate that is smooth between breaks and constant after the last: Gauss-Legendre with 7 points
/// on each piece, exact for polynomials up to degree 13.
class RunningTotal {
  public:
    /// `rate` in amount per day at an age in days; `breaks` in any order, at least one; totals start at the first.
    RunningTotal(std::function<double(double)> rate, std::vector<double> breaks);
    [[nodiscard]] double between(double from, double to) const;
    /// Age at which `amount` more has been used since `from`; infinity when it never is.
    [[nodiscard]] double reached(double from, double amount) const;

  private:
    [[nodiscard]] double up_to(double age) const;
    std::function<double(double)> rate_;
    std::vector<double> breaks_;
    std::vector<double> totals_;  // at each break
};

}  // namespace cropful::curves
