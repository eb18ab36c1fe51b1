#include "engine/worlds.hpp"

#include <algorithm>
#include <cmath>

namespace cropful::engine {

std::vector<Piece> pieces(Flock const& flock, Intake const& intake, Duration from, Duration to, Duration longest) {
    std::vector<double> ends{in_days(from), in_days(to)};
    for (auto const& breaks : {flock.breaks(), intake.spread_breaks()}) {
        for (double const age : breaks) {
            if (age > in_days(from) && age < in_days(to)) ends.push_back(age);
        }
    }
    std::sort(ends.begin(), ends.end());
    std::vector<Piece> all;
    for (std::size_t i = 1; i < ends.size(); ++i) {
        double const length = ends[i] - ends[i - 1];
        int const parts = std::max(1, static_cast<int>(std::ceil(length / in_days(longest))));
        if (length <= 0) continue;
        for (int part = 0; part < parts; ++part) {
            all.push_back({days(ends[i - 1] + length * part / parts), days(ends[i - 1] + length * (part + 1) / parts)});
        }
    }
    return all;
}

void add_feed(Usage<Mass> const& central, std::vector<Piece> const& pieces, Sway const& sway,
              std::vector<double>& totals) {
    totals.resize(sway.worlds());
    std::vector<double> factors;
    for (Piece const& piece : pieces) {
        double const kilograms = in_kilograms(central.between(piece.from, piece.to));
        sway.feed((piece.from + piece.to) / 2.0, factors);
        for (std::size_t world = 0; world < totals.size(); ++world) totals[world] += kilograms * factors[world];
    }
}

}  // namespace cropful::engine
