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

/// A value by age: monotone cubic Hermite between knots (Fritsch-Butland interior slopes, secant end slopes, as
/// Boost.Math 1.74 `pchip`), constant past the last knot.
/// Needs at least 4 rows in strictly rising age, the first at age 0; throws BadInput otherwise.
class Curve {
  public:
    explicit Curve(std::vector<Row> rows);
    /// In the table's unit; a negative age throws NoAnswer.
    [[nodiscard]] double value(quantities::Duration age, Band band = Band::central) const;
    [[nodiscard]] std::vector<Row> const& rows() const { return rows_; }

  private:
    struct Interpolants;
    std::vector<Row> rows_;
    std::shared_ptr<Interpolants const> interpolants_;
};

}  // namespace cropful::curves
