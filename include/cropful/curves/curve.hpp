#pragma once

#include <array>
#include <memory>
#include <vector>

#include "cropful/quantities/make.hpp"

namespace cropful::curves {

/// A row of a cited table: age and the low (5 %), central and high (95 %) values, in the table's own unit.
struct Row {
    double age_d;
    double low;
    double central;
    double high;
};

enum class Band { low, central, high };

/// The standard score below which 95 % of a normal law lies.
inline constexpr double score_95 = 1.6448536269514722;

/// Standard deviation of the logarithm of a value whose 5 % and 95 % points are `low` and `high`; where `low` is 0 the
/// upper half decides, and where all are 0 there is none.
double log_sd(double low, double central, double high);

/// A value by age: monotone cubic Hermite between knots (Fritsch-Butland interior slopes, secant end slopes, as
/// Boost.Math 1.74 `pchip`), constant past the last knot.
/// Needs at least 4 rows in strictly rising age, the first at age 0; throws BadInput otherwise.
class Curve {
  public:
    explicit Curve(std::vector<Row> rows);
    /// In the table's unit; a negative age throws NoAnswer.
    [[nodiscard]] double value(quantities::Duration age, Band band = Band::central) const;
    /// Standard deviation of the logarithm of the value at an age.
    [[nodiscard]] double log_sd(quantities::Duration age) const;
    [[nodiscard]] std::vector<Row> const& rows() const { return rows_; }

  private:
    struct Interpolants;
    std::vector<Row> rows_;
    std::shared_ptr<Interpolants const> interpolants_;
};

}  // namespace cropful::curves
