// Scores from SciPy's scipy.special.ndtri (Cephes), chances of scores from the C library's erfc.
#include <catch2/catch.hpp>
#include <cmath>

#include "engine/normal.hpp"
#include "engine/normal_scores.hpp"

using namespace cropful::engine;

namespace {

struct ChanceAndScore {
    double chance, score;
};

constexpr ChanceAndScore by_scipy[] = {{1e-300, -37.047096299361201},
                                       {1e-100, -21.273453560965322},
                                       {1e-50, -14.933337534788487},
                                       {1e-20, -9.2623400897984087},
                                       {1e-11, -6.7060231554951368},
                                       {1.3e-11, -6.6676114565107412},
                                       {1.4e-11, -6.6567230915181836},
                                       {1e-09, -5.9978070150076865},
                                       {1e-06, -4.7534243088228987},
                                       {3.0517578125e-05, -4.0087725941685841},
                                       {0.001, -3.0902323061678132},
                                       {0.01, -2.3263478740408408},
                                       {0.025, -1.9599639845400545},
                                       {0.05, -1.6448536269514729},
                                       {0.0749, -1.4402382675279635},
                                       {0.0751, -1.4388253927525403},
                                       {0.1, -1.2815515655446004},
                                       {0.2, -0.84162123357291418},
                                       {0.25, -0.67448975019608171},
                                       {0.3, -0.52440051270804089},
                                       {0.4, -0.25334710313579972},
                                       {0.45, -0.12566134685507402},
                                       {0.49, -0.02506890825871106},
                                       {0.4999, -0.00025066283008800752},
                                       {0.5, 0},
                                       {0.500001, 2.5066282747057052e-06},
                                       {0.6, 0.25334710313579972},
                                       {0.75, 0.67448975019608171},
                                       {0.9, 1.2815515655446004},
                                       {0.9249, 1.4388253927525403},
                                       {0.9251, 1.4402382675279635},
                                       {0.95, 1.6448536269514722},
                                       {0.975, 1.959963984540054},
                                       {0.99, 2.3263478740408408},
                                       {0.999, 3.0902323061678132},
                                       {0.9999, 3.7190164854557088},
                                       {0.999969482421875, 4.0087725941685841},
                                       {0.999999, 4.7534243088170873}};

}  // namespace

TEST_CASE("scores of chances, middle and tails", "[normal]") {
    std::vector<double> chances;
    for (auto const& one : by_scipy) chances.push_back(one.chance);
    auto const scores = scores_at(chances);
    REQUIRE(scores.size() == chances.size());
    for (std::size_t i = 0; i < scores.size(); ++i) {
        CAPTURE(chances[i]);
        CHECK_THAT(scores[i], Catch::WithinRel(by_scipy[i].score, 2e-15) || Catch::WithinAbs(by_scipy[i].score, 1e-16));
    }
}

TEST_CASE("many scores at a time are those of one at a time, and odd about one half", "[normal]") {
    constexpr std::size_t cells = 1000;
    std::vector<double> chances;
    for (std::size_t i = 0; i < cells; ++i) chances.push_back((static_cast<double>(i) + 0.5) / cells);
    auto const scores = scores_at(chances);
    for (std::size_t i = 0; i < cells; ++i) {
        CAPTURE(chances[i]);
        CHECK_THAT(scores[i], Catch::WithinRel(score_at(chances[i]), 1e-14));
        CHECK_THAT(scores[i], Catch::WithinRel(-scores[cells - 1 - i], 1e-12));
    }
}

TEST_CASE("chances of scores", "[normal]") {
    for (double from = -39; from < 39; from += 0.7) {
        Few scores(7);
        for (Eigen::Index i = 0; i < 7; ++i) scores[i] = from + 0.1 * static_cast<double>(i);
        Few const chances = below_scores(scores);
        for (Eigen::Index i = 0; i < 7; ++i) {
            CAPTURE(scores[i]);
            CHECK_THAT(chances[i], Catch::WithinAbs(std::erfc(-scores[i] / std::sqrt(2.0)) / 2, 3e-16));
        }
    }
}
