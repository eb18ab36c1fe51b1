// Sobol points: the first coordinates are those of Sobol (1967), USSR Comput. Math. Math. Phys. 7:86-112, with the
// direction numbers of Joe & Kuo (2008), SIAM J. Sci. Comput. 30:2635-2654: 0, 1/2, 3/4, 1/4, 3/8, 7/8, 5/8, 1/8.
// Normal scores from Abramowitz & Stegun (1964), Table 26.1 and 26.5.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include "cropful/fault.hpp"
#include "engine/draws.hpp"

using namespace cropful::engine;

namespace {

std::vector<Kin> many(std::size_t flocks, bool eggs = false) {
    return std::vector<Kin>(flocks, Kin{"quail", 0.5, eggs});
}

}  // namespace

TEST_CASE("eight points of one dimension: scores of the middles of eighths", "[draws]") {
    auto const scores = sobol_normals(8, 1);
    double const middles[] = {1, 9, 13, 5, 7, 15, 11, 3};  // sixteenths, in the sequence's order
    for (std::size_t i = 0; i < 8; ++i) {
        CHECK_THAT(std::erfc(-scores[i] / std::sqrt(2.0)) / 2, Catch::WithinAbs(middles[i] / 16, 1e-12));
    }
    CHECK_THAT(*std::max_element(scores.begin(), scores.end()), Catch::WithinAbs(1.534120544, 1e-8));  // of 15/16
}

TEST_CASE("every column is normal: moments of 4,096 points", "[draws]") {
    std::size_t const columns = 40;
    auto const scores = sobol_normals(4096, columns);
    for (std::size_t column = 0; column < columns; ++column) {
        auto const first = scores.begin() + static_cast<std::ptrdiff_t>(column * 4096);
        double const mean = std::accumulate(first, first + 4096, 0.0) / 4096;
        double const square = std::inner_product(first, first + 4096, first, 0.0) / 4096;
        CHECK_THAT(mean, Catch::WithinAbs(0, 1e-9));
        CHECK_THAT(square, Catch::WithinAbs(1, 2e-3));
    }
}

TEST_CASE("draws follow what is believed: means, variances and the farm's likeness", "[draws]") {
    Belief belief({{"quail", 0.5}, {"quail", 0.5, true}});
    belief.observe({0, 0.1, 0}, 0.2, 0.08);
    Draws const draws(belief, 4096);
    REQUIRE(draws.points() == 4096);
    auto const mean = [](std::span<double const> a) { return std::accumulate(a.begin(), a.end(), 0.0) / 4096; };
    auto const covariance = [&](std::span<double const> a, std::span<double const> b) {
        return std::inner_product(a.begin(), a.end(), b.begin(), 0.0) / 4096 - mean(a) * mean(b);
    };
    auto const feed = belief.score(0, Belief::Trait::feed);
    CHECK_THAT(mean(draws.feed(0)), Catch::WithinAbs(feed.mean, 1e-3));
    CHECK_THAT(covariance(draws.feed(0), draws.feed(0)), Catch::WithinAbs(feed.variance, 5e-3));
    CHECK_THAT(covariance(draws.feed(0), draws.feed(1)), Catch::WithinAbs(0.5 * feed.variance, 5e-3));
    CHECK_THAT(covariance(draws.water(0), draws.water(1)), Catch::WithinAbs(0.5, 5e-3));
    CHECK_THAT(covariance(draws.feed(0), draws.water(0)), Catch::WithinAbs(0, 5e-3));
    CHECK_THAT(covariance(draws.deaths(0), draws.deaths(1)), Catch::WithinAbs(0.5, 5e-3));
    CHECK_THAT(covariance(draws.deaths(0), draws.density(1)), Catch::WithinAbs(0, 5e-3));
    CHECK(draws.hatching(0).empty());  // chicks, or a rate that is stated
    CHECK_THAT(covariance(draws.hatching(1), draws.hatching(1)), Catch::WithinAbs(1, 5e-3));
    CHECK_THAT(covariance(draws.hatching(1), draws.deaths(1)), Catch::WithinAbs(0, 5e-3));
}

TEST_CASE("the sequence has no more dimensions than 900 flocks need", "[draws]") {
    CHECK_NOTHROW(Draws(Belief(many(900)), 2));
    CHECK_THROWS_WITH(Draws(Belief(many(800, true)), 2),
                      "so many hatches of eggs without a hatch_rate in one farm file: state it, or split the file");
}
