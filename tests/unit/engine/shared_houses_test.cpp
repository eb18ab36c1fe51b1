// Houses that hatches share, worked by hand. Bobwhites past the last knots neither die nor grow, so that their number
// is what is written: hatches of grown birds, each 14 days (of age 200 to 214) in pens that are free 2 days later.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <random>

#include "cautions.hpp"
#include "cropful/engine/placement.hpp"
#include "cropful/engine/readying.hpp"
#include "cropful/engine/season.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

/// One hatch for each pair of a day on which it comes and its birds.
domain::Farm pens(int count, int holds, std::vector<std::pair<double, int>> const& hatches) {
    auto farm = sample::round_figures();
    domain::Brooder pen;
    pen.key = "pen";
    pen.count = count;
    pen.holds = {{days(0), birds(holds)}};
    pen.shared = true;
    pen.until = domain::longest_life;
    pen.rest = days(2);
    farm.brooders.emplace("pen", pen);
    auto const first = farm.hatches.front();
    farm.hatches.clear();
    for (auto const& [day, heads] : hatches) {
        auto& one = farm.hatches.emplace_back(first);
        one.name = "H" + std::to_string(farm.hatches.size());
        one.date = first.date + days(day);
        one.chicks = birds(heads);
        one.until = days(214);
        one.hopper.reset();
        one.drinker.reset();
        one.housing = {{.from = days(0), .house = "pen", .hopper = "tube", .drinker = "bell"}};
    }
    return farm;
}

engine::Placement housed_together(domain::Farm const& farm) {
    auto const rations = readers::RationsReader().load(farm);
    return engine::place({farm, rations}, engine::Fits::sought);
}

/// "H1 1, H1 2, H2 1": who is in which.
std::string who(engine::Placement const& got) {
    std::string words;
    for (auto const& stay : got.stays)
        words += (words.empty() ? "" : ", ") + stay.hatch + " " + std::to_string(stay.number);
    return words;
}

}  // namespace

TEST_CASE("two hatches share a house as long as their birds fit", "[shared]") {
    auto const got = housed_together(pens(1, 200, {{0, 100}, {5, 100}}));
    CHECK(who(got) == "H1 1, H2 1");
    CHECK(got.unplaced.empty());
    auto const &first = got.stays.at(0), &second = got.stays.at(1);
    CHECK(in_birds(first.birds) == 100);
    CHECK(in_birds(second.birds) == 100);
    CHECK_FALSE(first.joins);
    CHECK(second.joins);
    CHECK(first.free_from == first.to);  // the others still live there
    CHECK(in_days(second.free_from - second.to) == 2);
    auto alone = pens(1, 200, {{0, 100}, {5, 100}});
    alone.brooders.at("pen").shared = false;
    CHECK(who(housed_together(alone)) == "H1 1");
}

TEST_CASE("a bird too many keeps a hatch out of a shared house", "[shared]") {
    auto const got = housed_together(pens(1, 199, {{0, 100}, {5, 100}}));
    CHECK(who(got) == "H1 1");
    REQUIRE(got.unplaced.size() == 1);
    CHECK(got.unplaced[0].hatch == "H2");
    CHECK(in_birds(got.unplaced[0].birds) == 100);
    CHECK_FALSE(got.unplaced[0].fits_after);  // not looked for
    CHECK(who(housed_together(pens(2, 199, {{0, 100}, {5, 100}}))) == "H1 1, H2 2");
}

TEST_CASE("birds of a hatch stay spread evenly over the houses it needs", "[shared]") {
    // 200 in pens for 150: two pens with 100 each; 100 more do not fit beside them
    CHECK(who(housed_together(pens(4, 150, {{0, 200}, {5, 200}}))) == "H1 1, H1 2, H2 3, H2 4");
    auto const got = housed_together(pens(3, 150, {{0, 200}, {5, 200}}));
    CHECK(who(got) == "H1 1, H1 2, H2 3");
    CHECK(in_birds(got.stays.at(2).birds) == 150);
    REQUIRE(got.unplaced.size() == 1);
    CHECK(got.unplaced[0].needs == 2);
    CHECK(got.unplaced[0].gets == 1);
    CHECK(in_birds(got.unplaced[0].birds) == 50);  // 200 less 150
    // two are needed: the one there is is full, not two thirds full
    CHECK(who(housed_together(pens(1, 150, {{0, 200}, {5, 10}}))) == "H1 1");
    // 50 fit beside 100
    CHECK(who(housed_together(pens(2, 150, {{0, 200}, {5, 50}, {6, 50}}))) == "H1 1, H1 2, H2 1, H3 2");
}

TEST_CASE("room that birds leave behind is for others from that age on", "[shared]") {
    auto farm = pens(1, 150, {{0, 100}, {7, 100}});
    CHECK(who(housed_together(farm)) == "H1 1");
    farm.hatches[0].removed = {{days(207), birds(50)}};  // 50 are left on day 7
    CHECK(who(housed_together(farm)) == "H1 1, H2 1");
    farm.hatches[1].date = farm.hatches[0].date + days(6);
    CHECK(who(housed_together(farm)) == "H1 1");
}

TEST_CASE("a house that holds fewer older birds", "[shared]") {
    auto farm = pens(1, 200, {{0, 100}, {5, 50}});
    CHECK(who(housed_together(farm)) == "H1 1, H2 1");
    // from 210 d on 100 fill 100/125 of it and 50 of the other age 50/200: 0.8 + 0.25 from day 10 on
    farm.brooders.at("pen").holds.push_back({days(210), birds(125)});
    CHECK(who(housed_together(farm)) == "H1 1");
    farm.hatches[1].chicks = birds(40);  // 0.8 + 0.2
    CHECK(who(housed_together(farm)) == "H1 1, H2 1");
}

TEST_CASE("what has no place is counted on the worst day of all who live there", "[shared]") {
    // of birds of age 210 a pen holds 125: the first are that old on day 10, when the second are 205
    auto farm = pens(1, 200, {{0, 100}, {5, 380}});
    farm.brooders.at("pen").holds.push_back({days(210), birds(125)});
    farm.hatches[1].until = days(209);  // never as old as that
    auto const got = housed_together(farm);
    CHECK(who(got) == "H1 1");  // 190 in each of two do not fit
    CHECK(in_birds(got.unplaced.at(0).birds) == 380);
    farm.brooders.at("pen").count = 2;
    farm.hatches[1].chicks = birds(500);  // three are needed, of 166.7 each; the empty one takes 200
    CHECK(who(housed_together(farm)) == "H1 1, H2 2");
    CHECK(in_birds(housed_together(farm).unplaced.at(0).birds) == 300);
    farm.hatches[1].chicks = birds(201);  // two, of 100.5 each: beside 0.8 there is no room
    farm.hatches[0].chicks = birds(40);   // 0.2, and 0.32 from day 10 on: 0.5025 fit, and nothing is missing
    CHECK(housed_together(farm).unplaced.empty());
    farm.brooders.at("pen").count = 1;  // 200 less 0.32 x 200 are 136
    CHECK(std::round(in_birds(housed_together(farm).unplaced.at(0).birds)) == 65);
}

TEST_CASE("kinds add up by the share of a house that each fills", "[shared]") {
    auto farm = pens(1, 1, {{0, 100}, {5, 50}});
    auto& pen = farm.brooders.at("pen");
    pen.holds.clear();
    pen.of_kind = {{"bobwhite", {{days(0), birds(200)}}}, {"chukar", {{days(0), birds(100)}}}};
    farm.hatches[1].kind = "chukar";
    farm.hatches[1].first_age = days(213);  // of one day, so that none dies
    farm.hatches[1].date = farm.hatches[0].date + -days(5);
    CHECK(who(housed_together(farm)) == "H1 1, H2 1");  // half and half, on day 208
    farm.hatches[1].chicks = birds(51);
    CHECK(who(housed_together(farm)) == "H1 1");
}

TEST_CASE("an empty shared house rests, one with birds is joined", "[shared]") {
    CHECK(who(housed_together(pens(1, 200, {{0, 100}, {15, 100}}))) == "H1 1");  // 14 d and 2 d
    CHECK(who(housed_together(pens(1, 200, {{0, 100}, {16, 100}}))) == "H1 1, H2 1");
    auto const got = housed_together(pens(1, 200, {{0, 100}, {13, 100}, {15, 100}, {16, 100}}));
    CHECK(who(got) == "H1 1, H2 1, H3 1");
    CHECK(got.stays.at(2).joins);
    CHECK(got.unplaced.at(0).hatch == "H4");
}

TEST_CASE("houses fixed by the farm, and crowded, are shared with nobody", "[shared]") {
    auto farm = pens(2, 100, {{0, 150}, {5, 10}});
    farm.hatches[0].housing[0].houses = 1;
    auto const got = housed_together(farm);
    CHECK(who(got) == "H1 1, H2 2");
    CHECK(in_birds(got.stays.at(0).birds) == 100);
}

TEST_CASE("a house that is joined is not cleaned and bedded for those who come", "[shared]") {
    auto farm = pens(1, 200, {{0, 100}, {5, 100}, {30, 100}});
    auto& pen = farm.brooders.at("pen");
    pen.floor = domain::Floor{metres(2), metres(1)};
    pen.bedding = domain::Bedding{metres(0.05), litres(100), {}};
    auto const got = housed_together(farm);
    auto const ready = engine::readying(farm, got, {});
    REQUIRE(ready.bedding.size() == 1);
    CHECK(ready.bedding[0].times == 2);  // for the first and the third
    CHECK(std::round(in_days(got.stays.at(2).ready_by - got.stays.at(2).from)) == -2);
}

TEST_CASE("birds that live together are a caution; birds in houses of their own are none", "[shared]") {
    CHECK(sample::states(pens(1, 200, {{0, 100}, {5, 100}}), "shared-house", {{"house", "pen"}}));
    CHECK_FALSE(sample::due(pens(2, 100, {{0, 100}, {5, 100}}), "shared-house"));
    auto const plan = sample::plan_of(pens(1, 200, {{0, 100}, {5, 100}}));
    CHECK(plan.hatches.at(1).stages.at(0).numbers == std::vector<int>{1});
}

// Whatever comes: no house ever holds more birds than it can, nobody comes to one that rests, and each gets as many
// houses as it needs or is named.
TEST_CASE("shared houses are never too full", "[shared]") {
    std::mt19937 random(7);
    auto const draw = [&](int from, int to) { return std::uniform_int_distribution(from, to)(random); };
    for (int round = 0; round < 20; ++round) {
        int const holds = draw(50, 150);
        std::vector<std::pair<double, int>> hatches;
        for (int i = 0; i < 30; ++i) hatches.emplace_back(draw(0, 60), draw(5, 300));
        std::ranges::stable_sort(hatches, {}, &std::pair<double, int>::first);
        auto const got = housed_together(pens(draw(1, 6), holds, hatches));
        std::map<std::string, int> houses;
        for (auto const& stay : got.stays) {
            double there = 0;
            for (auto const& other : got.stays) {
                bool const same = other.number == stay.number && other.from <= stay.from && stay.from < other.to;
                if (same) there += in_birds(other.birds);
            }
            CHECK(there <= holds * (1 + 1e-9));
            houses[stay.hatch] += 1;
            for (auto const& other : got.stays) {
                bool const rests = other.number == stay.number && other.to <= stay.from && stay.from < other.free_from;
                CHECK_FALSE((rests && !stay.joins));
            }
        }
        for (std::size_t i = 0; i < hatches.size(); ++i) {
            std::string const name = "H" + std::to_string(i + 1);
            bool const named = std::ranges::any_of(got.unplaced, [&](auto const& one) { return one.hatch == name; });
            CHECK((named || houses[name] == (hatches[i].second + holds - 1) / holds));
        }
    }
}
