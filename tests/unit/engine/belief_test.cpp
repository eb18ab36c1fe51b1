// The linear-Gaussian step against results worked by hand (Kalman 1960, J. Basic Eng. 82:35-45, scalar case).
#include <catch2/catch.hpp>
#include <cmath>

#include "cropful/engine/belief.hpp"

using cropful::engine::Belief;
using Trait = Belief::Trait;

namespace {

using Kins = std::vector<cropful::engine::Kin>;
Kins const alone{{"quail", 0.5}};
Kins const alike{{"quail", 0.5}, {"quail", 0.5}};
Kins const mixed{{"quail", 0.5}, {"pheasant", 0.85}, {"pheasant", 0.85}};

}  // namespace

TEST_CASE("before anything is seen scores are standard normal and alike within a farm", "[belief]") {
    Belief const belief(alike);
    CHECK(belief.flocks() == 2);
    CHECK(belief.score(1, Trait::water).mean == 0);
    CHECK(belief.score(1, Trait::water).variance == 1);
    CHECK_THAT(belief.expected({0, 0.3, 0.4}).variance, Catch::WithinRel(0.25, 1e-12));
}

TEST_CASE("one sight: variance 1 / (1 + (h / s)^2), mean by the same gain", "[belief]") {
    Belief belief(alone);
    belief.observe({0, 0.1, 0}, 0.12, 0.08);
    double const precision = 1 + 0.1 * 0.1 / (0.08 * 0.08);
    CHECK_THAT(belief.score(0, Trait::feed).variance, Catch::WithinRel(1 / precision, 1e-12));
    CHECK_THAT(belief.score(0, Trait::feed).mean, Catch::WithinRel(0.1 * 0.12 / (0.08 * 0.08) / precision, 1e-12));
    CHECK(belief.score(0, Trait::water).mean == 0);
    CHECK(belief.score(0, Trait::water).variance == 1);
}

TEST_CASE("five sights of 0.08 leave 1 / (1 + 5 (h / s)^2) of the variance, in any order", "[belief]") {
    Belief there(alone), back(alone);
    double const values[] = {0.02, 0.15, -0.03, 0.08, 0.2};
    for (int i = 0; i < 5; ++i) {
        there.observe({0, 0.09, 0.05}, values[i], 0.08);
        back.observe({0, 0.09, 0.05}, values[4 - i], 0.08);
    }
    CHECK_THAT(there.score(0, Trait::feed).mean, Catch::WithinRel(back.score(0, Trait::feed).mean, 1e-12));
    double const seen = 5 * (0.09 * 0.09 + 0.05 * 0.05) / (0.08 * 0.08);
    CHECK_THAT(there.expected({0, 0.09, 0.05}).variance,
               Catch::WithinRel((0.09 * 0.09 + 0.05 * 0.05) / (1 + seen), 1e-12));
}

TEST_CASE("a flock teaches what its kind shares about the next of it, and a quarter about another kind", "[belief]") {
    Belief belief(mixed);
    belief.observe({1, 1, 0}, 2, 1);
    CHECK_THAT(belief.score(1, Trait::feed).mean, Catch::WithinRel(1.0, 1e-12));
    CHECK_THAT(belief.score(2, Trait::feed).mean, Catch::WithinRel(0.85, 1e-12));
    CHECK_THAT(belief.score(0, Trait::feed).mean, Catch::WithinRel(0.25, 1e-12));
    CHECK_THAT(belief.score(0, Trait::feed).variance, Catch::WithinRel(1 - 0.25 * 0.25 / 2, 1e-12));
    CHECK(belief.score(2, Trait::water).mean == 0);
}

TEST_CASE("what no diary teaches keeps what the kind shares", "[belief]") {
    Belief belief(mixed);
    belief.observe({1, 1, 0}, 2, 1);
    auto const root = belief.untaught_root({0, 1, 2});  // of [1 .25 .25; .25 1 .85; .25 .85 1], by hand
    CHECK_THAT(root[3], Catch::WithinRel(0.25, 1e-12));
    CHECK_THAT(root[4], Catch::WithinRel(std::sqrt(1 - 0.0625), 1e-12));
    CHECK_THAT(root[7], Catch::WithinRel((0.85 - 0.0625) / std::sqrt(1 - 0.0625), 1e-12));
    CHECK_THAT(belief.untaught_root({1, 2})[2], Catch::WithinRel(0.85, 1e-12));
}

TEST_CASE("opened again, a flock keeps its mean and nothing else", "[belief]") {
    Belief belief(alike);
    belief.observe({0, 1, 0}, 2, 1);
    belief.reopen(0);
    CHECK_THAT(belief.score(0, Trait::feed).mean, Catch::WithinRel(1.0, 1e-12));
    CHECK(belief.score(0, Trait::feed).variance == 1);
}

TEST_CASE("the root times itself is the covariance", "[belief]") {
    Belief belief(alike);
    belief.observe({1, 0.5, 0.3}, 1, 0.2);
    auto const root = belief.root();
    double variance = 0, water = 0;
    for (std::size_t j = 0; j < 4; ++j) {
        variance += root[2 * 4 + j] * root[2 * 4 + j];
        water += root[3 * 4 + j] * root[3 * 4 + j];
    }
    CHECK_THAT(variance, Catch::WithinRel(belief.score(1, Trait::feed).variance, 1e-12));
    CHECK_THAT(water, Catch::WithinRel(belief.score(1, Trait::water).variance, 1e-12));
}
