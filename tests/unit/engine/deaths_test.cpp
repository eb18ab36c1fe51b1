#include "engine/deaths.hpp"

#include <catch2/catch.hpp>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

/// A kind of which exactly a tenth is dead from day 10 on: no doubt about its table.
rations::Kind a_tenth() {
    auto kind = readers::RationsReader().kind("bobwhite");
    kind.mortality.curve = curves::Curve({{0, 0, 0, 0}, {10, 10, 10, 10}, {50, 10, 10, 10}, {100, 10, 10, 10}});
    return kind;
}

}  // namespace

TEST_CASE("deaths without doubt about the table follow the binomial law", "[deaths]") {
    // arithmetic: of 10 birds that each die with 0.1, P(>= 3) = 1 - 0.9^10 - 10 x 0.1 x 0.9^9 - 45 x 0.01 x 0.9^8
    auto const kind = a_tenth();
    auto const chance = [&](double birds, double dead) {
        return engine::chance_of_deaths(kind, days(0), days(10), birds, dead);
    };
    CHECK(chance(10, 3) == Approx(0.0701908).epsilon(1e-5));
    CHECK(chance(10, 0) == 1);
    CHECK(chance(10, 10) == Approx(1e-10));
    CHECK(chance(10, 1) == Approx(1 - 0.3486784401));
    CHECK(chance(10, 11) == 0);
}
