#include "cropful/curves/curve.hpp"

#include <catch2/catch.hpp>

#include "cropful/fault.hpp"

using namespace cropful;
using namespace cropful::curves;
using quantities::days;

namespace {

std::vector<Row> const straight = {{0, 1, 2, 3}, {1, 2, 4, 6}, {3, 4, 8, 12}, {7, 8, 16, 24}};
std::vector<Row> const bent = {{0, 0, 0, 0}, {1, 1, 1, 1}, {2, 3, 3, 3}, {4, 4, 4, 4}};

}  // namespace

TEST_CASE("a curve meets its knots and is constant past the last", "[curves]") {
    Curve const curve(bent);
    for (Row const& row : bent) CHECK_THAT(curve.value(days(row.age_d)), Catch::WithinAbs(row.central, 1e-12));
    CHECK(curve.value(days(400)) == 4);
}

TEST_CASE("a straight table stays straight, in every band", "[curves]") {
    Curve const curve(straight);
    CHECK_THAT(curve.value(days(5)), Catch::WithinRel(12.0, 1e-12));
    CHECK_THAT(curve.value(days(5), Band::low), Catch::WithinRel(6.0, 1e-12));
    CHECK_THAT(curve.value(days(5), Band::high), Catch::WithinRel(18.0, 1e-12));
}

TEST_CASE("interior slopes are the weighted harmonic mean of Fritsch and Butland", "[curves]") {
    // By hand: secants 1, 2, 0.5. At 1: (w1+w2)/(w1/1+w2/2), w = 3 and 3 -> 4/3. End slope 1 (secant).
    // Hermite at 0.5: (y0+y1)/2 + (s0-s1)/8 = 0.5 + (1 - 4/3)/8.
    Curve const curve(bent);
    CHECK_THAT(curve.value(days(0.5)), Catch::WithinRel(0.5 - 1.0 / 24, 1e-12));
}

TEST_CASE("an age before the hatch has no value", "[curves]") {
    CHECK_THROWS_AS(Curve(bent).value(days(-0.1)), NoAnswer);
}

TEST_CASE("tables that are no curve are refused", "[curves]") {
    auto const broken = GENERATE(std::vector<Row>{{0, 1, 1, 1}, {1, 1, 1, 1}, {2, 1, 1, 1}},
                                 std::vector<Row>{{1, 1, 1, 1}, {2, 1, 1, 1}, {3, 1, 1, 1}, {4, 1, 1, 1}},
                                 std::vector<Row>{{0, 1, 1, 1}, {2, 1, 1, 1}, {2, 1, 1, 1}, {4, 1, 1, 1}},
                                 std::vector<Row>{{0, 2, 1, 3}, {1, 1, 1, 1}, {2, 1, 1, 1}, {4, 1, 1, 1}},
                                 std::vector<Row>{{0, 1, 3, 2}, {1, 1, 1, 1}, {2, 1, 1, 1}, {4, 1, 1, 1}});
    CHECK_THROWS_AS(Curve(broken), BadInput);
}
