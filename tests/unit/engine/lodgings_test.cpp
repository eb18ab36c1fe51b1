// How many houses a hatch takes, by hand. Bobwhites past the last knots neither die nor grow, so that their number is
// what is written.
#include <catch2/catch.hpp>
#include <cmath>

#include "engine/hatch_model.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

/// 100 grown birds: in pens for 40 from day 200, in runs for 30 from day 210 to 221.
domain::Farm lodged() {
    auto farm = sample::round_figures();
    domain::Brooder pen;
    pen.key = "pen";
    pen.count = 20;
    pen.holds = {{days(0), birds(40)}};
    pen.until = domain::longest_life;
    farm.brooders.emplace("pen", pen);
    auto run = pen;
    run.key = "run";
    run.holds = {{days(0), birds(30)}};
    farm.brooders.emplace("run", run);
    auto& hatch = farm.hatches.front();
    hatch.chicks = birds(100);
    hatch.hopper.reset();
    hatch.drinker.reset();
    hatch.housing = {
        {.from = days(0), .house = "pen", .hopper = "tube", .hoppers = 2, .drinker = "bell"},
        {.from = days(210), .house = "run", .drinker = "bell", .drinkers = 3},
    };
    return farm;
}

std::vector<engine::Lodging> lodgings_of(domain::Farm const& farm) {
    auto const rations = readers::RationsReader().load(farm);
    return engine::Season(farm, rations).hatch(0).lodgings();
}

std::vector<int> houses_of(domain::Farm const& farm) {
    std::vector<int> counts;
    for (auto const& one : lodgings_of(farm)) counts.push_back(one.houses);
    return counts;
}

}  // namespace

TEST_CASE("as many houses as hold the birds of a stage's start, and vessels in each", "[lodging]") {
    auto const all = lodgings_of(lodged());
    REQUIRE(all.size() == 2);
    CHECK(in_days(all[0].from) == 200);  // younger birds were not counted
    CHECK(in_days(all[0].to) == 210);
    CHECK(in_days(all[1].to) == 221);
    CHECK(all[0].houses == 3);
    CHECK(all[0].hoppers() == 6);
    CHECK(all[0].drinkers() == 3);
    CHECK(all[1].houses == 4);
    CHECK(all[1].drinkers() == 12);
}

TEST_CASE("houses that hold them to the bird", "[lodging]") {
    auto farm = lodged();
    farm.hatches[0].chicks = birds(120);
    CHECK(houses_of(farm) == std::vector<int>{3, 4});
    farm.hatches[0].chicks = birds(121);
    CHECK(houses_of(farm) == std::vector<int>{4, 5});
    farm.hatches[0].chicks = birds(7);
    CHECK(houses_of(farm) == std::vector<int>{1, 1});
}

TEST_CASE("a farm may fix how many", "[lodging]") {
    auto farm = lodged();
    farm.hatches[0].housing[0].houses = 6;
    CHECK(houses_of(farm) == std::vector<int>{6, 4});
    CHECK(lodgings_of(farm)[0].hoppers() == 12);
    farm.hatches[0].housing[0].houses = 1;  // and be crowded
    CHECK(houses_of(farm) == std::vector<int>{1, 4});
}

TEST_CASE("a house may hold fewer older birds", "[lodging]") {
    auto farm = lodged();
    auto& holds = farm.brooders.at("pen").holds;
    holds = {{days(0), birds(200)}, {days(150), birds(50)}, {days(205), birds(25)}};
    CHECK(houses_of(farm) == std::vector<int>{4, 4});  // 25 of 100 before they move
    farm.hatches[0].removed = {{days(204), birds(50)}};
    CHECK(houses_of(farm) == std::vector<int>{2, 2});  // 50 of 100, then 25 of 50; 30 of 50
    holds[2].from = days(210);                         // when they have moved
    farm.hatches[0].removed.clear();
    CHECK(houses_of(farm) == std::vector<int>{2, 4});
}

TEST_CASE("a house may hold another number of each kind", "[lodging]") {
    auto farm = lodged();
    auto& pen = farm.brooders.at("pen");
    pen.holds.clear();
    pen.of_kind = {{"bobwhite", {{days(0), birds(20)}}}, {"chukar", {{days(0), birds(10)}}}};
    CHECK(houses_of(farm) == std::vector<int>{5, 4});  // 100 / 20, 100 / 30
    pen.of_kind["bobwhite"].push_back({days(205), birds(10)});
    CHECK(houses_of(farm) == std::vector<int>{10, 4});  // 100 / 10 before they move
}

TEST_CASE("birds removed before a move need no house", "[lodging]") {
    auto farm = lodged();
    farm.hatches[0].removed = {{days(210), birds(40)}};
    CHECK(houses_of(farm) == std::vector<int>{3, 2});
    farm.hatches[0].removed[0].at = days(211);
    CHECK(houses_of(farm) == std::vector<int>{3, 4});
}

TEST_CASE("a hatch without housing lives in one place, with its vessels in all", "[lodging]") {
    auto const all = lodgings_of(sample::round_figures());
    REQUIRE(all.size() == 1);
    CHECK_FALSE(all[0].stage.house);
    CHECK(all[0].houses == 1);
    CHECK(in_days(all[0].from) == 200);
    CHECK(in_days(all[0].to) == 221);
}

// Dead by day 42: 5, 11 and 20 % (rations/birds/bobwhite.toml), the logarithm normal and low and high the 5 % and 95 %
// points: 19 flocks in 20 lose at least 11 % x (5/20)^(1/2) = 5.5 %, so 945 of 1,000 are there at the most.
TEST_CASE("houses are reserved for flocks of which few die", "[lodging]") {
    auto farm = lodged();
    auto& hatch = farm.hatches.front();
    hatch.first_age = days(0);
    hatch.chicks = birds(1000);
    hatch.housing[1].from = days(42);
    auto const kind = readers::RationsReader().load(farm).kinds.at("bobwhite");
    auto const rows = kind.mortality.curve.rows();
    auto const row = std::find_if(rows.begin(), rows.end(), [](auto const& one) { return one.age_d == 42; });
    REQUIRE(row != rows.end());
    double const alive = 1000 * (1 - row->central / 100 * std::sqrt(row->low / row->high));
    farm.brooders.at("run").holds[0].birds = birds(alive / 10 + 0.01);
    CHECK(houses_of(farm)[1] == 10);  // the usual 890 would need as many
    farm.brooders.at("run").holds[0].birds = birds(alive / 10 - 0.01);
    CHECK(houses_of(farm)[1] == 11);
}

// 50, 65 and 80 % of eggs hatch (rations/birds/bobwhite.toml): 19 times in 20 at most 65 % x (80/50)^(1/2) = 82.2 %.
TEST_CASE("eggs of which nobody knows how many hatch reserve houses for a good hatch", "[lodging]") {
    auto farm = lodged();
    auto& hatch = farm.hatches.front();
    hatch.first_age = days(0);
    hatch.chicks.reset();
    hatch.eggs = 1000;
    auto const rate = readers::RationsReader().load(farm).kinds.at("bobwhite").hatch_rate;
    double const chicks = 1000 * rate.value * std::sqrt(rate.high / rate.low);
    auto& room = farm.brooders.at("pen").holds[0].birds;
    room = birds(chicks / 10 * 1.01);  // the worlds drawn are off by less than 1 %
    CHECK(houses_of(farm)[0] == 10);
    room = birds(chicks / 10 * 0.99);
    CHECK(houses_of(farm)[0] == 11);
    hatch.hatch_rate = 0.7;
    room = birds(70);
    CHECK(houses_of(farm)[0] == 10);
}
