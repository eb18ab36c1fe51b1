#include "cropful/engine/sheet.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "cropful/domain/moment.hpp"
#include "cropful/readers/rations.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::WithinAbs;
using Catch::WithinRel;

namespace {

engine::Sheet sheet_of(domain::Farm const& farm, engine::Window window = {}) {
    readers::RationsReader const reader;
    auto const rations = reader.load(farm);
    return engine::make_sheet({farm, rations}, reader.brooder_advice(), window);
}

engine::RoomNeeded room_for_500(std::size_t row) {
    auto const space = readers::RationsReader().kind("bobwhite").space;
    return engine::room_for(space, space.rows.at(row), birds(500));
}

}  // namespace

// An advice page on game bird housing by a feed supplier (2019), its table applied to 500 day-old quail.
TEST_CASE("room for 500 quail as the advice page has it", "[engine][sheet]") {
    auto const day_old = room_for_500(0);
    CHECK_THAT(day_old.floor_square_feet, WithinAbs(55.6, 0.05));
    CHECK_THAT(day_old.feeder_feet * 12, WithinRel(250.0, 1e-12));
    CHECK_THAT(day_old.water_trough_feet, WithinRel(5.0, 1e-12));
    CHECK(day_old.founts == 5);
    auto const ten_days = room_for_500(1);
    CHECK_THAT(ten_days.floor_square_feet, WithinAbs(83.3, 0.05));
    CHECK_THAT(ten_days.feeder_feet * 12, WithinRel(500.0, 1e-12));
    CHECK_FALSE(ten_days.founts);
    auto const six_weeks = room_for_500(2);
    CHECK_THAT(six_weeks.floor_square_feet, WithinAbs(166.7, 0.05));
    CHECK_THAT(six_weeks.feeder_feet * 12, WithinRel(750.0, 1e-12));
}

// Twelve chukars need a fifth of a fount, and get one; the page has three founts for 200.
TEST_CASE("founts are whole", "[engine][sheet]") {
    auto const space = readers::RationsReader().kind("chukar").space;
    CHECK(engine::room_for(space, space.rows.at(0), birds(12)).founts == 1);
    CHECK(engine::room_for(space, space.rows.at(0), birds(200)).founts == 3);
    CHECK(engine::room_for(space, space.rows.at(0), birds(201)).founts == 4);
}

// 240 bobwhites: of 240, 5 % are dead at 7 d and 11 % at 42 d (rations/birds/bobwhite.toml); 60 leave at 8 wk.
TEST_CASE("heads are shown day by day, and on both sides of a removal", "[engine][sheet]") {
    auto const sheet = sheet_of(sample::farm_from(sample::bobwhites()));
    auto const& heads = sheet.hatches.at(0).heads;
    CHECK(heads.size() == 112 + 1 + 1);  // every day of 16 wk, the end, and once more before the removal at 56 d
    CHECK_THAT(in_birds(heads.at(0).birds), WithinRel(240.0, 1e-12));
    CHECK_THAT(in_birds(heads.at(7).birds), WithinRel(228.0, 1e-12));
    CHECK_THAT(in_birds(heads.at(42).birds), WithinRel(213.6, 1e-12));
    CHECK_THAT(in_birds(heads.at(56).birds) - in_birds(heads.at(57).birds), WithinRel(60.0, 1e-6));
    CHECK_THAT(in_days(heads.back().age), WithinRel(112.0, 1e-12));
}

// Grown bobwhites that eat 1 kg a day (the fixture); from day 207 on another feed.
TEST_CASE("feed is shown for whole days", "[engine][sheet]") {
    auto const sheet = sheet_of(sample::round_figures());
    auto const& days_of = sheet.hatches.at(0).days;
    REQUIRE(days_of.size() == 21);
    for (auto const& day : days_of) {
        CHECK_THAT(in_kilograms(day.central), WithinRel(1.0, 1e-9));
        CHECK(day.band.p05 < day.band.p50);
        CHECK(day.band.p50 < day.band.p95);
    }
    // 7 kg and 14 kg of 40 kg bags: one of each
    CHECK(sheet.hatches.at(0).bags == std::vector<std::optional<int>>{1, 1});
}

TEST_CASE("a part of a day is shown when there is no whole one", "[engine][sheet]") {
    auto const farm = sample::round_figures();
    auto const from = farm.hatches.at(0).date + days(203);
    auto const sheet = sheet_of(farm, {from, from + days(0.5)});
    CHECK(sheet.hatches.at(0).days.size() == 1);
}

// Mississippi State University's table: 90 to 95 F in the first week, 5 F less each week, 70 F from day 36 on.
TEST_CASE("warmth is shown for the ages asked for", "[engine][sheet]") {
    auto const farm = sample::farm_from(sample::bobwhites());
    auto const all = sheet_of(farm).hatches.at(0).warmth;
    REQUIRE(all.size() == 6);
    CHECK_THAT(all.at(0).high.in_fahrenheit(), WithinRel(95.0, 1e-12));
    auto const date = farm.hatches.at(0).date;
    auto const second = sheet_of(farm, {date + days(7), date + days(14)}).hatches.at(0).warmth;
    REQUIRE(second.size() == 1);
    CHECK(second.at(0).first_day == 8);
    auto const room = sheet_of(farm, {date + days(12), date + days(41)}).hatches.at(0).room;
    REQUIRE(room.size() == 1);
    CHECK_THAT(in_days(room.at(0).from), WithinRel(12.0, 1e-12));
    CHECK(room.at(0).birds_per_square_foot == 6);
}

TEST_CASE("a hatch has its own cautions, and the sheet what is of no one hatch", "[engine][sheet]") {
    auto farm = sample::farm_from(sample::bobwhites());
    farm.feeds.begin()->second.keeps = days(1);
    farm.hoppers.at("tube").at_most = days(40);
    auto const sheet = sheet_of(farm);
    auto const said = [](auto const& cautions, std::string const& id) {
        return std::count_if(cautions.begin(), cautions.end(), [&](auto const& one) { return one.id == id; });
    };
    CHECK(said(sheet.cautions, "past-keeping") == 1);
    CHECK(said(sheet.hatches.at(0).cautions, "past-keeping") == 0);
    CHECK(sheet.cautions.size() + sheet.hatches.at(0).cautions.size() == sheet.plan.cautions.size());
    // said of both hatches at once in a plan, each on its own page of a sheet
    auto second = farm.hatches[0];
    second.name = "May";
    second.chicks = birds(100);
    farm.hatches.push_back(second);
    auto const two = sheet_of(farm);
    CHECK(said(two.plan.cautions, "stale-feed") == 1);
    CHECK(said(two.cautions, "stale-feed") == 0);
    for (auto const& hatch : two.hatches) CHECK(said(hatch.cautions, "stale-feed") == 1);
}

TEST_CASE("all a sheet says rests on something it names", "[engine][sheet]") {
    auto const sheet = sheet_of(sample::farm_from(sample::bobwhites()));
    std::size_t lamp = 0, signs = 0;
    for (auto const& one : sheet.assumptions) {
        CHECK_FALSE(one.id.empty());
        CHECK_FALSE(one.source.text.empty());
        lamp += one.id == "lamps" ? 1U : 0U;
        signs += one.id == "signs" ? 1U : 0U;
    }
    CHECK(lamp == sheet.advice.lamp.size());
    CHECK(signs == sheet.advice.signs.size());
    CHECK(lamp > 0);
    CHECK(signs > 0);
}
