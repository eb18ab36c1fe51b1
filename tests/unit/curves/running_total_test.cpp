#include "cropful/curves/running_total.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using cropful::curves::RunningTotal;

TEST_CASE("the total of a polynomial is exact on each piece", "[curves]") {
    // integral of t^6 is t^7 / 7; after the last break the rate stays at its value there.
    RunningTotal const total([](double t) { return t < 2 ? std::pow(t, 6) : 3.0; }, {2, 0});
    CHECK_THAT(total.between(0, 2), Catch::WithinRel(128.0 / 7, 1e-13));
    CHECK_THAT(total.between(1, 2), Catch::WithinRel(127.0 / 7, 1e-13));
    CHECK_THAT(total.between(0, 5), Catch::WithinRel(128.0 / 7 + 9, 1e-13));
}

TEST_CASE("reached is the inverse of between, before and after the last break", "[curves]") {
    RunningTotal const total([](double t) { return t < 2 ? std::pow(t, 6) : 3.0; }, {0, 1, 2});
    CHECK_THAT(total.reached(0, 1.0 / 7), Catch::WithinRel(1.0, 1e-12));
    CHECK_THAT(total.reached(1, 127.0 / 7), Catch::WithinRel(2.0, 1e-12));
    CHECK_THAT(total.reached(1, 127.0 / 7 + 6), Catch::WithinRel(4.0, 1e-12));
    CHECK_THAT(total.reached(10, 6), Catch::WithinRel(12.0, 1e-12));
    CHECK(total.reached(1, 0) == 1);
}

TEST_CASE("what nobody uses is never gone", "[curves]") {
    RunningTotal const total([](double t) { return t < 1 ? 1.0 : 0.0; }, {0, 1});
    CHECK(std::isinf(total.reached(0, 2)));
    CHECK_THAT(total.reached(0, 0.5), Catch::WithinRel(0.5, 1e-12));
}
