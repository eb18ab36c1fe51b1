// Days, costs, bedding and disinfectant by hand, of birds that eat 1 kg and drink 2 L a day for 21 days: 7 d of starter
// at 20 a bag of 40 kg, 14 d of grower at 30 (sample::round_figures).
#include "cropful/engine/overview.hpp"

#include <catch2/catch.hpp>

#include "cropful/fault.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::WithinRel;

namespace {

engine::Overview season_of(domain::Farm const& farm, engine::Window window = {}) {
    auto const rations = readers::RationsReader().load(farm);
    return engine::make_overview({farm, rations}, window);
}

/// Those birds, come at midnight.
domain::Farm from_midnight() {
    auto farm = sample::round_figures();
    farm.hatches[0].date = domain::Moment(farm.hatches[0].date.date());
    return farm;
}

/// The birds two weeks in boxes of 2 m x 1 m, 5 cm of bedding, 1 L of solution a box.
domain::Farm brooded() {
    auto farm = sample::round_figures();
    domain::Brooder box;
    box.key = "box";
    box.count = 3;
    box.holds = {{days(0), birds(40)}};  // of 68.03 birds: two boxes
    box.until = days(214);
    box.floor = domain::Floor{metres(2), metres(1)};
    box.bedding = domain::Bedding{metres(0.05), litres(150), money(7.5)};
    box.cleaning = domain::Cleaning{"bleach", litres(1)};
    farm.brooders.emplace("box", box);
    farm.disinfectants["bleach"] = {
        .key = "bleach", .title = "Bleach", .strength = 0.05, .use_at = 0.001, .pack = litres(0.03), .price = money(4)};
    farm.hatches[0].brooder = "box";
    return farm;
}

}  // namespace

TEST_CASE("a season's days are those of its hatches", "[season]") {
    auto farm = from_midnight();
    farm.hatches.push_back(farm.hatches.front());
    farm.hatches[1].name = "May";
    farm.hatches[1].date = farm.hatches[0].date + days(7);
    auto const season = season_of(farm);
    REQUIRE(season.days.size() == 28);
    CHECK(season.from.iso() == "2027-10-22T00:00");
    CHECK_THAT(in_birds(season.days[3].birds), WithinRel(1000 / sample::grown_bobwhite, 1e-9));
    CHECK_THAT(in_litres(season.days[3].water), WithinRel(2.0, 1e-9));
    CHECK_THAT(in_litres(season.days[10].water), WithinRel(4.0, 1e-9));
    REQUIRE(season.days[10].feeds.size() == 2);  // grower by the first, starter by the second
    CHECK(season.days[10].feeds[0].feed == "grower");
    for (auto const& eaten : season.days[10].feeds) CHECK_THAT(in_kilograms(eaten.amount), WithinRel(1.0, 1e-9));
    CHECK(season.days[27].feeds.size() == 1);
}

TEST_CASE("a hatch that comes at noon has half a first and half a last day", "[season]") {
    auto farm = from_midnight();
    farm.hatches[0].date = farm.hatches[0].date + days(0.5);
    auto const all = season_of(farm).days;
    REQUIRE(all.size() == 22);
    CHECK_THAT(in_litres(all.front().water), WithinRel(1.0, 1e-9));
    CHECK_THAT(in_litres(all.back().water), WithinRel(1.0, 1e-9));
    REQUIRE(all[7].feeds.size() == 2);  // the feed changes at noon
    CHECK_THAT(in_kilograms(all[7].feeds[0].amount), WithinRel(0.5, 1e-9));
}

TEST_CASE("days without birds between two hatches are listed", "[season]") {
    auto farm = from_midnight();
    farm.hatches.push_back(farm.hatches.front());
    farm.hatches[1].name = "May";
    farm.hatches[1].date = farm.hatches[0].date + days(30);
    auto const season = season_of(farm);
    REQUIRE(season.days.size() == 51);
    CHECK(in_birds(season.days[25].birds) == 0);
    CHECK(season.days[25].feeds.empty());
}

TEST_CASE("a part of the time is whole days", "[season]") {
    auto const farm = from_midnight();
    auto const start = farm.hatches[0].date + days(200);
    auto const season = season_of(farm, {start + days(2.5), start + days(5)});
    CHECK(season.days.size() == 3);
    CHECK(season.from.iso() == "2027-10-24T00:00");
    CHECK(season.to.iso() == "2027-10-27T00:00");
    CHECK_THROWS_AS(season_of(farm, {start + days(21), {}}), NoAnswer);
}

TEST_CASE("feed costs what it weighs", "[season]") {
    auto farm = sample::round_figures();
    auto cost = season_of(farm).costs.at(0);
    CHECK_THAT(in_kilograms(cost.feed), WithinRel(21.0, 1e-9));
    CHECK_THAT(in_money(*cost.cost), WithinRel(7 * 0.5 + 14 * 0.75, 1e-9));
    CHECK_THAT(in_money(*cost.per_bird), WithinRel(14 / (1000 / sample::grown_bobwhite), 1e-9));
    CHECK_THAT(in_money(*cost.week_more), WithinRel(7 * 0.75, 1e-9));
    CHECK_FALSE(cost.per_dozen);
    CHECK_FALSE(cost.lays_unstated);
    farm.hatches[0].removed = {
        {days(210), birds(500 / sample::grown_bobwhite)}};  // half of them: 10 kg, then 11 d of half a kg
    cost = season_of(farm).costs.at(0);
    CHECK_THAT(in_birds(cost.raised), WithinRel(1000 / sample::grown_bobwhite, 1e-9));
    CHECK_THAT(in_money(*cost.cost), WithinRel(7 * 0.5 + (3 + 5.5) * 0.75, 1e-9));
    CHECK_THAT(in_money(*cost.week_more), WithinRel(3.5 * 0.75, 1e-9));
    farm.feeds.at("starter").price.reset();
    cost = season_of(farm).costs.at(0);
    CHECK_FALSE(cost.cost);
    CHECK_FALSE(cost.per_bird);
    CHECK(cost.week_more);
}

// Laying coturnix eat 22.5 g a day (rations/birds/coturnix.toml): 100 hens 2.25 kg, at 0.75 a kg.
TEST_CASE("a dozen eggs cost what is eaten in lay", "[season]") {
    auto farm = sample::round_figures();
    auto& hatch = farm.hatches.front();
    hatch.kind = "coturnix";
    hatch.chicks = birds(100);
    hatch.feeding = {{"grower", days(0)}};
    hatch.laying_from = days(211);
    auto cost = season_of(farm).costs.at(0);
    CHECK_FALSE(cost.per_dozen);
    CHECK(cost.lays_unstated);
    hatch.lays = 0.6;  // 600 eggs in 10 d
    cost = season_of(farm).costs.at(0);
    CHECK_THAT(in_money(*cost.per_dozen), WithinRel(22.5 * 0.75 / 50, 1e-9));
    CHECK_FALSE(cost.lays_unstated);
    hatch.laying_from = days(221);  // when they are gone
    cost = season_of(farm).costs.at(0);
    CHECK_FALSE(cost.per_dozen);
    CHECK_FALSE(cost.lays_unstated);
}

TEST_CASE("bedding is depth times floor, in whole bags", "[season]") {
    auto farm = brooded();
    auto bedding = season_of(farm).readying.bedding.at(0);
    CHECK(bedding.times == 2);
    CHECK_THAT(in_litres(bedding.each), WithinRel(100.0, 1e-12));
    CHECK_THAT(in_litres(bedding.total), WithinRel(200.0, 1e-12));
    CHECK(bedding.bags == 2);
    CHECK(in_money(*bedding.cost) == 15);
    CHECK(bedding.first.iso_date() == "2027-10-21");  // the day before
    farm.brooders.at("box").rest = days(4);
    CHECK(season_of(farm).readying.bedding.at(0).first.iso_date() == "2027-10-18");
    farm.brooders.at("box").bedding->price.reset();
    CHECK_FALSE(season_of(farm).readying.bedding.at(0).cost);
}

TEST_CASE("disinfectant is C1 V1 = C2 V2, V2 the whole", "[season]") {
    auto const bought = season_of(brooded()).readying.disinfectants.at(0);
    CHECK_THAT(bought.water_parts, WithinRel(49.0, 1e-12));  // CDC, Best Practices, Appendix E
    REQUIRE(bought.cleanings.size() == 1);
    CHECK(bought.cleanings[0].times == 2);
    CHECK_THAT(in_millilitres(bought.cleanings[0].product), WithinRel(20.0, 1e-12));
    CHECK_THAT(in_millilitres(bought.cleanings[0].water), WithinRel(980.0, 1e-12));
    CHECK_THAT(in_millilitres(bought.product), WithinRel(40.0, 1e-12));
    CHECK(bought.packs == 2);
    CHECK(in_money(*bought.cost) == 8);
    domain::Disinfectant other;
    other.strength = 0.035;
    other.use_at = 0.005;
    CHECK_THAT(engine::water_parts(other), WithinRel(6.0, 1e-12));  // CDC, likewise
}

TEST_CASE("a brooder is readied in the time asked for, or not listed", "[season]") {
    auto farm = brooded();
    auto const start = farm.hatches[0].date + days(200);
    CHECK(season_of(farm, {start, {}}).readying.bedding.empty());  // it was the day before
    CHECK(sample::plan_of(farm, {start + days(-1), {}}).readying.bedding.size() == 1);
    farm.hatches[0].brooder.reset();
    CHECK(season_of(farm).readying.disinfectants.empty());
}

TEST_CASE("what readies brooders is in the cost, not in the bags", "[season]") {
    auto const plan = sample::plan_of(brooded());
    CHECK(plan.bags == 2);
    CHECK(in_money(plan.cost) == 50 + 15 + 8);
    CHECK(plan.cost_is_whole);
    auto farm = brooded();
    farm.disinfectants.at("bleach").pack.reset();
    CHECK_FALSE(sample::plan_of(farm).cost_is_whole);
}
