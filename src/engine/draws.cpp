#include "engine/draws.hpp"

#include <boost/random/sobol.hpp>

#include "cropful/domain/farm.hpp"
#include "cropful/fault.hpp"
#include "engine/normal.hpp"

namespace cropful::engine {

namespace {

constexpr std::size_t most_columns = 3667;  // Boost's direction numbers end there, and a flock takes four or five
static_assert(4 * domain::most_hatches <= most_columns);

constexpr double two_to_64 = 18446744073709551616.0;

}  // namespace

std::size_t worlds_for(std::size_t flocks) {
    constexpr std::size_t many = 250, very_many = 500;
    if (flocks <= many) return Belief::usual_worlds;
    return Belief::usual_worlds / (flocks <= very_many ? 4 : 8);
}

std::vector<double> sobol_normals(std::size_t points, std::size_t columns) {
    boost::random::sobol engine(columns);
    std::vector<double> scores(points * columns);
    double const half_a_cell = 0.5 / static_cast<double>(points);
    for (std::size_t row = 0; row < points; ++row) {
        for (std::size_t column = 0; column < columns; ++column) {
            // the engine leaves out the sequence's first point, 0
            double const corner = row == 0 ? 0 : static_cast<double>(engine()) / two_to_64;
            scores[column * points + row] = score_at(corner + half_a_cell);
        }
    }
    return scores;
}

Draws::Draws(Belief const& belief, std::size_t points) : points_(points) {
    std::vector<std::size_t> flocks, deaths, eggs, rates;
    for (std::size_t flock = 0; flock < belief.flocks(); ++flock) {
        flocks.push_back(flock);
        deaths.push_back(4 * flock + 2);
        hatching_.push_back(belief.rate_unknown(flock) ? 4 * belief.flocks() + eggs.size() : none);
        if (hatching_.back() == none) continue;
        eggs.push_back(flock);
        rates.push_back(hatching_.back());
    }
    std::size_t const columns = 4 * belief.flocks() + eggs.size();
    if (columns > most_columns) {
        throw NoAnswer("so many hatches of eggs without a hatch_rate in one farm file: state it, or split the file");
    }
    scores_ = sobol_normals(points, columns);
    bend_to(belief);
    mix(belief.untaught_root(flocks), deaths);
    mix(belief.untaught_root(eggs), rates);
}

/// From the last row of the root up, so that each row still finds the independent scores it sums.
void Draws::mix(std::vector<double> const& root, std::vector<std::size_t> const& columns) {
    std::size_t const n = columns.size();
    for (std::size_t i = n; i-- > 0;) {
        double* const own = &scores_[columns[i] * points_];
        for (std::size_t p = 0; p < points_; ++p) own[p] *= root[i * n + i];
        for (std::size_t j = 0; j < i; ++j) {
            double const weight = root[i * n + j];
            if (weight == 0) continue;
            double const* const other = &scores_[columns[j] * points_];
            for (std::size_t p = 0; p < points_; ++p) own[p] += weight * other[p];
        }
    }
}

/// Gives the feed and water scores the believed means and covariance.
void Draws::bend_to(Belief const& belief) {
    std::vector<std::size_t> columns;
    for (std::size_t i = 0; i < 2 * belief.flocks(); ++i) columns.push_back(4 * (i / 2) + i % 2);
    mix(belief.root(), columns);
    for (std::size_t i = 0; i < columns.size(); ++i) {
        double const mean = belief.score(i / 2, i % 2 == 0 ? Belief::Trait::feed : Belief::Trait::water).mean;
        double* const own = &scores_[columns[i] * points_];
        for (std::size_t p = 0; p < points_; ++p) own[p] += mean;
    }
}

}  // namespace cropful::engine
