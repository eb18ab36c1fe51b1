// Linear programs worked by hand.
#include "blends/linear_program.hpp"

#include <catch2/catch.hpp>

using namespace cropful::blends;
using namespace cropful::rations;
using Catch::WithinAbs;

namespace {

/// Two columns from 0 up, the rows given.
LinearProgram two(std::vector<double> cost, std::vector<Row> rows) {
    return {.cost = std::move(cost), .columns = {{0, unbounded}, {0, unbounded}}, .rows = std::move(rows)};
}

}  // namespace

TEST_CASE("a corner, its duals and its reduced costs", "[lp]") {
    // 2x + 3y with x + y >= 4 and x <= 3: x = 3, y = 1, cost 9; one more on the first row costs 3, on the second saves
    // 1
    auto const best = minimise(two({2, 3}, {{{1, 1}, {4, unbounded}}, {{1, 0}, {-unbounded, 3}}}));
    REQUIRE(best.outcome == Outcome::optimal);
    CHECK_THAT(best.cost, WithinAbs(9, 1e-9));
    CHECK_THAT(best.x[0], WithinAbs(3, 1e-9));
    CHECK_THAT(best.x[1], WithinAbs(1, 1e-9));
    CHECK_THAT(best.row_duals[0], WithinAbs(3, 1e-9));
    CHECK_THAT(best.row_duals[1], WithinAbs(-1, 1e-9));
    CHECK(best.duals_unique);
    CHECK(best.mix_unique);
}

TEST_CASE("what is left out says by how much it is too dear", "[lp]") {
    auto const best = minimise(two({1, 5}, {{{1, 1}, {1, 1}}}));
    CHECK_THAT(best.x[1], WithinAbs(0, 1e-9));
    CHECK_THAT(best.reduced_costs[1], WithinAbs(4, 1e-9));
}

TEST_CASE("impossible and endless programs are told apart", "[lp]") {
    CHECK(minimise(two({1, 1}, {{{1, 1}, {4, unbounded}}, {{1, 1}, {-unbounded, 3}}})).outcome == Outcome::infeasible);
    CHECK(minimise(two({-1, 0}, {{{0, 1}, {-unbounded, 3}}})).outcome == Outcome::endless);
}

TEST_CASE("a corner where too many limits meet has no duals of its own", "[lp]") {
    // x + y >= 2, x >= 1 and y >= 1 all meet at (1, 1)
    auto const best =
        minimise(two({1, 1}, {{{1, 1}, {2, unbounded}}, {{1, 0}, {1, unbounded}}, {{0, 1}, {1, unbounded}}}));
    CHECK_THAT(best.cost, WithinAbs(2, 1e-9));
    CHECK_FALSE(best.duals_unique);
}

TEST_CASE("mixes that cost the same are told", "[lp]") {
    CHECK_FALSE(minimise(two({1, 1}, {{{1, 1}, {2, unbounded}}})).mix_unique);
}
