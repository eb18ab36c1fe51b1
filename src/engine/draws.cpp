#include "engine/draws.hpp"

#include <algorithm>
#include <bit>
#include <boost/random/sobol.hpp>
#include <cassert>
#include <cstdint>

#include "cropful/domain/farm.hpp"
#include "cropful/fault.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/arrays.hpp"
#include "engine/normal_scores.hpp"

namespace cropful::engine {

namespace {

constexpr std::size_t most_columns = 3667;  // Boost's direction numbers end there, and a flock takes four or five
static_assert(4 * domain::most_hatches <= most_columns);

using SobolEngine = boost::random::sobol_engine<std::uint32_t, 32>;
constexpr double two_to_32 = 4294967296.0;

/// For one column: what the cell of a row differs by (exclusive or) from that of the row before it, by the lowest bit
/// set in the row's number (Antonov & Saleev 1979, USSR Comput. Math. Math. Phys. 19:252-256).
using CellMoves = std::vector<std::size_t>;

/// Of every column, for `points` cells a column.
std::vector<CellMoves> cell_moves(std::size_t points, std::size_t columns) {
    std::vector<CellMoves> moves(columns);
    SobolEngine engine(columns);
    for (std::size_t row = 1; row < points; row *= 2) {
        // row 2 row - 1 lies apart from row 0, where all is 0, by this move alone; the engine leaves out row 0
        engine.seed(static_cast<std::uint32_t>(2 * row - 2));
        for (CellMoves& column : moves) {
            double const corner = static_cast<double>(engine()) / two_to_32;
            column.push_back(quantities::whole_number<std::size_t>(corner * static_cast<double>(points)));
        }
    }
    return moves;
}

/// The scores of the middles of cells.
std::vector<double> cell_scores(std::size_t points) {
    std::vector<double> chances(points);
    for (std::size_t cell = 0; cell < points; ++cell) {
        chances[cell] = (static_cast<double>(cell) + 0.5) / static_cast<double>(points);
    }
    return scores_at(chances);
}

}  // namespace

std::size_t worlds_for(std::size_t flocks) {
    constexpr std::size_t many = 250, very_many = 500;
    if (flocks <= many) return Belief::usual_worlds;
    return Belief::usual_worlds / (flocks <= very_many ? 4 : 8);
}

/// Each column has one point in each cell.
std::vector<double> sobol_normals(std::size_t points, std::size_t columns) {
    assert(std::has_single_bit(points));
    std::vector<double> const of_cell = cell_scores(points);
    std::vector<double> scores(points * columns);
    double* next = scores.data();
    for (CellMoves const& moves : cell_moves(points, columns)) {
        std::size_t cell = 0;
        *next++ = of_cell[cell];
        for (std::size_t row = 1; row < points; ++row) {
            cell ^= moves[static_cast<std::size_t>(std::countr_zero(row))];
            *next++ = of_cell[cell];
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

/// From the last row of the root up, so that each row still finds the independent scores it sums; few points at a time,
/// so that all columns of them stay in the nearest cache.
void Draws::mix(std::vector<double> const& root, std::vector<std::size_t> const& columns) {
    std::size_t const n = columns.size();
    few_by_few(points_, [&](std::size_t from, std::size_t many) {
        auto const some = [&](std::size_t i) { return numbers(&scores_[columns[i] * points_ + from], many); };
        for (std::size_t i = n; i-- > 0;) {
            auto own = some(i);
            own *= root[i * n + i];
            for (std::size_t j = 0; j < i; ++j) {
                if (double const weight = root[i * n + j]; weight != 0) own += weight * some(j);
            }
        }
    });
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
