#include "engine/worlds.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/whole.hpp"

namespace cropful::engine {

using namespace quantities;

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
        int const parts = std::max(1, whole_number(std::ceil(length / in_days(longest))));
        if (length <= 0) continue;
        for (int part = 0; part < parts; ++part) {
            all.push_back({days(ends[i - 1] + length * part / parts), days(ends[i - 1] + length * (part + 1) / parts)});
        }
    }
    return all;
}

std::vector<double> world_totals(Usage<Mass> const& central, std::vector<Piece> const& pieces, Spread const& spread,
                                 Sway const& sway) {
    ByScores totals(spread.hatched().size());
    for (Piece const& piece : pieces) {
        Duration const middle = (piece.from + piece.to) / 2.0;
        double const kilograms = in_kilograms(central.between(piece.from, piece.to));
        double const sd = spread.central().feed_sd(middle);
        auto const heads = spread.heads(middle);
        for (std::size_t i = 0; i < Spread::scores; ++i) {
            double const eaten = kilograms * std::exp(Spread::score(i) * sd);
            for (std::size_t j = 0; j < heads.size(); ++j) {
                totals[j / Spread::scores][i][j % Spread::scores] += eaten * heads[j];
            }
        }
    }
    return sway.read(totals);
}

}  // namespace cropful::engine
