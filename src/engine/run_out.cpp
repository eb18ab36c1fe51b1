#include "engine/run_out.hpp"

#include <array>
#include <cmath>
#include <span>

#include "engine/arrays.hpp"

namespace cropful::engine {

using namespace quantities;

RunOut::RunOut(Use use, std::vector<double> room)
    : use_(std::move(use)), room_(std::move(room)), used_(room_.size(), 0.0), empty_(room_.size(), never) {}

void RunOut::pass(Piece const& piece, std::vector<double> const& factors) {
    Duration const middle = (piece.from + piece.to) / 2.0;
    double const first = use_(piece.from, middle), second = use_(middle, piece.to);
    double const all = first + second;
    if (!(all > 0)) return;
    // within the piece the rate of use is taken to go straight from one end to the other, in shares of `all`
    double const start = (3 * first - second) / all, rise = 4 * (second - first) / all;
    double const from = in_days(piece.from), length = in_days(piece.to - piece.from);
    few_by_few(room_.size(), [&](std::size_t begin, std::size_t many) {
        auto used = numbers(&used_[begin], many);
        Few const now = all * numbers(&factors[begin], many);
        Few const left = numbers(&room_[begin], many) - used;
        used += now;
        if ((left - now).minCoeff() > 0) return;
        std::array<Eigen::Index, few> emptied;
        std::size_t count = 0;
        for (Eigen::Index i = 0; i < now.size(); ++i) {  // without a branch that could go either way
            emptied[count] = i;
            count += static_cast<std::size_t>(left[i] > 0) & static_cast<std::size_t>(now[i] >= left[i]);
        }
        for (Eigen::Index const i : std::span(emptied).first(count)) {
            double const share = left[i] / now[i];
            double const part = 2 * share / (start + std::sqrt(start * start + 2 * rise * share));
            numbers(&empty_[begin], many)[i] = from + length * part;
        }
    });
}

std::vector<double> RunOut::shares() const {
    std::vector<double> shares(room_.size());
    for (std::size_t world = 0; world < room_.size(); ++world) shares[world] = used_[world] / room_[world];
    return shares;
}

}  // namespace cropful::engine
