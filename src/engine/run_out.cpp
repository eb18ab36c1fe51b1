#include "engine/run_out.hpp"

#include <cmath>

namespace cropful::engine {

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
    for (std::size_t world = 0; world < room_.size(); ++world) {
        double const now = all * factors[world];
        double const left = room_[world] - used_[world];
        used_[world] += now;
        if (left <= 0 || now < left) continue;
        double const share = left / now;
        empty_[world] = from + length * 2 * share / (start + std::sqrt(start * start + 2 * rise * share));
    }
}

std::vector<double> RunOut::shares() const {
    std::vector<double> shares(room_.size());
    for (std::size_t world = 0; world < room_.size(); ++world) shares[world] = used_[world] / room_[world];
    return shares;
}

}  // namespace cropful::engine
