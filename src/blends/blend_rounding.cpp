#include "blends/blend_rounding.hpp"

#include <algorithm>
#include <numeric>

namespace cropful::blends {

using namespace quantities;

namespace {

constexpr double no_gain = 1e-12;
constexpr std::size_t moves_each = 4;  // at most so many steps for each ingredient

/// The rows of a problem and what a mix makes of them.
class Misses {
  public:
    Misses(BlendProblem const& problem, std::vector<double> const& shares) : rows_(problem.program.rows) {
        for (Row const& row : rows_) {
            activity_.push_back(std::inner_product(shares.begin(), shares.end(), row.coefficients.begin(), 0.0));
        }
    }
    /// The total miss once a share `step` has gone from one column to another.
    [[nodiscard]] double after(std::size_t from, std::size_t to, double step) const {
        double total = 0;
        for (std::size_t r = 0; r < rows_.size(); ++r) {
            double const level = activity_[r] + step * (rows_[r].coefficients[to] - rows_[r].coefficients[from]);
            total += std::max({0.0, rows_[r].range.lower - level, level - rows_[r].range.upper});
        }
        return total;
    }
    void move(std::size_t from, std::size_t to, double step) {
        for (std::size_t r = 0; r < rows_.size(); ++r) {
            activity_[r] += step * (rows_[r].coefficients[to] - rows_[r].coefficients[from]);
        }
    }

  private:
    std::vector<Row> const& rows_;
    std::vector<double> activity_;
};

struct Move {
    std::size_t from = 0, to = 0;
    double misses = 0;
};

/// The move that lessens the misses most; `from` equals `to` where none does.
Move best_move(Misses const& misses, std::vector<Mass> const& amounts, Mass step, double share) {
    Move best{.from = 0, .to = 0, .misses = misses.after(0, 0, 0) - no_gain};
    for (std::size_t from = 0; from < amounts.size(); ++from) {
        if (amounts[from] < step * 1.5) continue;  // its last step stays
        for (std::size_t to = 0; to < amounts.size(); ++to) {
            if (to == from || !(amounts[to] > kilograms(0))) continue;
            double const total = misses.after(from, to, share);
            if (total < best.misses) best = {from, to, total};
        }
    }
    return best;
}

}  // namespace

std::vector<Mass> mended(BlendProblem const& problem, std::vector<Mass> const& amounts, Mass step) {
    Mass const batch = std::accumulate(amounts.begin(), amounts.end(), kilograms(0));
    double const share = ratio(step / batch);
    std::vector<double> shares;
    for (Mass const& amount : amounts) shares.push_back(ratio(amount / batch));
    Misses misses(problem, shares);
    std::vector<Mass> better = amounts;
    for (std::size_t count = 0; count < moves_each * amounts.size(); ++count) {
        Move const move = best_move(misses, better, step, share);
        if (move.from == move.to) break;
        misses.move(move.from, move.to, share);
        better[move.from] -= step;
        better[move.to] += step;
    }
    return better;
}

}  // namespace cropful::blends
