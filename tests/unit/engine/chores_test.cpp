// When somebody is in the barn: arithmetic on a clock.
#include "engine/chores.hpp"

#include <catch2/catch.hpp>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using domain::parse_moment;

namespace {

domain::Farm seen_to(std::vector<double> const& hours) {
    domain::Farm farm;
    for (double const hour : hours) farm.chores.push_back(days(hour / 24));
    return farm;
}

}  // namespace

TEST_CASE("what must not be late is done at the last chore before it", "[chores]") {
    engine::Chores const chores(seen_to({6.5, 17.5}));
    auto const [at, last] = GENERATE(table<std::string, std::string>({{"2027-04-05T06:29", "2027-04-04T17:30"},
                                                                      {"2027-04-05T06:30", "2027-04-05T06:30"},
                                                                      {"2027-04-05T06:31", "2027-04-05T06:30"},
                                                                      {"2027-04-05T17:29", "2027-04-05T06:30"},
                                                                      {"2027-04-05T17:30", "2027-04-05T17:30"},
                                                                      {"2027-04-05T23:59", "2027-04-05T17:30"},
                                                                      {"2027-04-06T00:00", "2027-04-05T17:30"},
                                                                      {"2028-03-01T00:00", "2028-02-29T17:30"}}));
    CHECK(chores.last_by(parse_moment(at)).iso() == last);
}

TEST_CASE("what must not be early is done at the first chore from it on", "[chores]") {
    engine::Chores const chores(seen_to({6.5, 17.5}));
    auto const [at, first] = GENERATE(table<std::string, std::string>({{"2027-04-05T00:00", "2027-04-05T06:30"},
                                                                       {"2027-04-05T06:30", "2027-04-05T06:30"},
                                                                       {"2027-04-05T06:31", "2027-04-05T17:30"},
                                                                       {"2027-04-05T17:30", "2027-04-05T17:30"},
                                                                       {"2027-04-05T17:31", "2027-04-06T06:30"},
                                                                       {"2027-12-31T20:00", "2028-01-01T06:30"}}));
    CHECK(chores.first_from(parse_moment(at)).iso() == first);
}

TEST_CASE("the chore after another is a later one", "[chores]") {
    engine::Chores const chores(seen_to({6.5, 17.5}));
    CHECK(chores.first_after(parse_moment("2027-04-05T06:29")).iso() == "2027-04-05T06:30");
    CHECK(chores.first_after(parse_moment("2027-04-05T06:30")).iso() == "2027-04-05T17:30");
    CHECK(chores.first_after(parse_moment("2027-04-05T17:30")).iso() == "2027-04-06T06:30");
}

TEST_CASE("one chore a day", "[chores]") {
    engine::Chores const chores(seen_to({9}));
    CHECK(chores.last_by(parse_moment("2027-04-05T08:59")).iso() == "2027-04-04T09:00");
    CHECK(chores.last_by(parse_moment("2027-04-05T09:00")).iso() == "2027-04-05T09:00");
    CHECK(chores.first_from(parse_moment("2027-04-05T09:01")).iso() == "2027-04-06T09:00");
    CHECK(chores.first_after(parse_moment("2027-04-05T09:00")).iso() == "2027-04-06T09:00");
}

TEST_CASE("a farm that does not say is seen to at 07:00 and 18:00", "[chores]") {
    engine::Chores const chores(domain::Farm{});  // DESIGN.md, section 7
    CHECK(chores.first_from(parse_moment("2027-04-05")).iso() == "2027-04-05T07:00");
    CHECK(chores.first_after(parse_moment("2027-04-05T07:00")).iso() == "2027-04-05T18:00");
}

TEST_CASE("what arithmetic takes from an hour or adds to it does not move its chore", "[chores]") {
    engine::Chores const chores(seen_to({7, 18}));
    auto const morning = parse_moment("2027-04-05T07:00");
    double const hair = GENERATE(-1e-11, 1e-11);
    CHECK(chores.last_by(morning + days(hair)).iso() == "2027-04-05T07:00");
    CHECK(chores.first_from(morning + days(hair)).iso() == "2027-04-05T07:00");
    CHECK(chores.first_after(morning + days(hair)).iso() == "2027-04-05T18:00");
}

TEST_CASE("a hatch's chores by its age", "[chores]") {
    auto hatch = sample::farm_from(sample::bobwhites()).hatches.front();
    hatch.date = parse_moment("2027-04-05T14:30");
    engine::ChoresByAge const chores(domain::Farm{}, hatch);
    CHECK_THAT(in_days(chores.last_by(days(0))), Catch::WithinAbs(-7.5 / 24, 1e-9));     // 07:00 of that day
    CHECK_THAT(in_days(chores.first_after(days(0))), Catch::WithinAbs(3.5 / 24, 1e-9));  // 18:00
    CHECK_THAT(in_days(chores.last_by(days(10))), Catch::WithinAbs(10 - 7.5 / 24, 1e-9));
}
