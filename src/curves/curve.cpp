#include "cropful/curves/curve.hpp"

#include <math.h>  // pchip of Boost 1.74 calls isnan unqualified (boostorg/math#397)

#include <boost/math/interpolators/pchip.hpp>
#include <sstream>

#include "cropful/fault.hpp"

namespace cropful::curves {

namespace {

using Pchip = boost::math::interpolators::pchip<std::vector<double>>;

constexpr std::size_t fewest_rows = 4;  // what pchip needs

Pchip interpolant(std::vector<Row> const& rows, double Row::*column) {
    std::vector<double> ages, values;
    for (Row const& row : rows) {
        ages.push_back(row.age_d);
        values.push_back(row.*column);
    }
    return {std::move(ages), std::move(values)};
}

std::string row_text(Row const& row) {
    std::ostringstream text;
    text << "[" << row.age_d << ", " << row.low << ", " << row.central << ", " << row.high << "]";
    return text.str();
}

void check_rows(std::vector<Row> const& rows) {
    if (rows.size() < fewest_rows) {
        throw BadInput(std::to_string(rows.size()) + " rows", "at least " + std::to_string(fewest_rows) + " rows");
    }
    if (rows.front().age_d != 0) throw BadInput("a first row " + row_text(rows.front()), "a first row at age 0");
    for (std::size_t i = 0; i < rows.size(); ++i) {
        Row const& row = rows[i];
        if (row.low < 0 || row.low > row.central || row.central > row.high) {
            throw BadInput("row " + row_text(row), "0 <= low <= central <= high");
        }
        if (i > 0 && row.age_d <= rows[i - 1].age_d) throw BadInput("row " + row_text(row), "ages that rise");
    }
}

}  // namespace

double log_sd(double low, double central, double high) {
    if (low > 0) return std::log(high / low) / (2 * score_95);
    return central > 0 ? std::log(high / central) / score_95 : 0;
}

struct Curve::Interpolants {
    Pchip low, central, high;
};

Curve::Curve(std::vector<Row> rows) : rows_(std::move(rows)) {
    check_rows(rows_);
    interpolants_ = std::make_shared<Interpolants const>(
        Interpolants{interpolant(rows_, &Row::low), interpolant(rows_, &Row::central), interpolant(rows_, &Row::high)});
}

double Curve::value(quantities::Duration age, Band band) const {
    double const d = quantities::in_days(age);
    if (!(d >= 0)) throw NoAnswer("age " + std::to_string(d) + " d lies before the hatch");
    double const within = std::min(d, rows_.back().age_d);
    switch (band) {
        case Band::low:
            return interpolants_->low(within);
        case Band::high:
            return interpolants_->high(within);
        case Band::central:
            break;
    }
    return interpolants_->central(within);
}

double Curve::log_sd(quantities::Duration age) const {
    return curves::log_sd(value(age, Band::low), value(age), value(age, Band::high));
}

}  // namespace cropful::curves
