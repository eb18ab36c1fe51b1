// Which brooder holds which hatch, worked by hand. Bobwhites past the last knots neither die nor grow, so that their
// number is what is written: two hatches of 100 grown birds, each 14 days in boxes for 60, two boxes, 2 days of rest.
#include "cropful/engine/placement.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "cropful/engine/season.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

domain::Farm barn(double second_comes) {
    auto farm = sample::round_figures();
    domain::Brooder box;
    box.key = "box";
    box.count = 2;
    box.holds = {{days(0), birds(60)}};
    box.until = days(214);
    box.rest = days(2);
    farm.brooders.emplace("box", box);
    auto& first = farm.hatches.front();
    first.chicks = birds(100);
    first.brooder = "box";
    auto second = first;
    second.name = "May";
    second.date = first.date + days(second_comes);
    farm.hatches.push_back(second);
    return farm;
}

engine::Placement placed(domain::Farm const& farm) {
    auto const rations = readers::RationsReader().load(farm);
    return engine::place({farm, rations}, engine::Fits::sought);
}

}  // namespace

TEST_CASE("a hatch takes as many brooders as it needs, the lowest numbers first", "[placement]") {
    auto const got = placed(barn(16));  // 14 d and 2 d of rest after the first
    REQUIRE(got.stays.size() == 4);
    CHECK(got.unplaced.empty());
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(got.stays[i].number == static_cast<int>(i % 2) + 1);
        CHECK(got.stays[i].hatch == (i < 2 ? "April" : "May"));
        CHECK(in_birds(got.stays[i].birds) == 50);
        CHECK(in_days(got.stays[i].to - got.stays[i].from) == 14);
        CHECK(in_days(got.stays[i].free_from - got.stays[i].to) == 2);
    }
    CHECK(got.stays[0].from.iso_date() == "2027-10-22");  // 200 d after 5 April
}

TEST_CASE("a day of rest too few keeps a hatch out", "[placement]") {
    auto const got = placed(barn(15));
    CHECK(got.stays.size() == 2);
    REQUIRE(got.unplaced.size() == 1);
    auto const& one = got.unplaced[0];
    CHECK(one.hatch == "May");
    CHECK(in_birds(one.birds) == 100);
    CHECK(one.needs == 2);
    CHECK(one.gets == 0);
    REQUIRE((one.fits_before && one.fits_after));
    CHECK(one.fits_after->iso_date() == "2027-04-21");   // 16 d after 5 April
    CHECK(one.fits_before->iso_date() == "2027-03-20");  // 16 d before it
}

TEST_CASE("a hatch that finds too few takes those there are", "[placement]") {
    auto farm = barn(10);
    farm.brooders.at("box").count = 3;
    auto const got = placed(farm);
    REQUIRE(got.stays.size() == 3);
    CHECK(got.stays[2].number == 3);
    CHECK(in_birds(got.stays[2].birds) == 60);  // as many as it holds
    REQUIRE(got.unplaced.size() == 1);
    CHECK(got.unplaced[0].gets == 1);
    CHECK(in_birds(got.unplaced[0].birds) == 40);
    CHECK(in_birds(got.unplaced[0].of) == 100);
}

TEST_CASE("the most crowded day decides, for the whole stay", "[placement]") {
    auto farm = barn(40);
    farm.brooders.at("box").holds = {{days(0), birds(100)}, {days(207), birds(99)}};
    auto got = placed(farm);
    CHECK(got.stays.size() == 4);
    farm.brooders.at("box").holds[1].birds = birds(100);
    CHECK(placed(farm).stays.size() == 2);
    farm.brooders.at("box").holds = {{days(0), birds(100)}, {days(214), birds(1)}};  // they have left by then
    CHECK(placed(farm).stays.size() == 2);
    farm.brooders.at("box").count = 1;
    farm.brooders.at("box").holds = {{days(0), birds(100)}, {days(207), birds(60)}};
    got = placed(farm);
    CHECK(in_birds(got.unplaced.at(0).birds) == 40);
    CHECK_FALSE(got.unplaced.at(0).fits_after);  // two are needed on any date
}

TEST_CASE("birds removed before a crowded age are not counted", "[placement]") {
    auto farm = barn(40);
    farm.brooders.at("box").holds = {{days(0), birds(100)}, {days(207), birds(60)}};
    for (auto& hatch : farm.hatches) hatch.removed = {{days(207), birds(40)}};
    CHECK(placed(farm).stays.size() == 2);
    for (auto& hatch : farm.hatches) hatch.removed = {{days(208), birds(40)}};
    CHECK(placed(farm).stays.size() == 4);
}

TEST_CASE("a hatch sold early leaves early", "[placement]") {
    auto farm = barn(12);
    farm.hatches[0].until = days(210);  // 10 d, and 2 d of rest
    CHECK(placed(farm).unplaced.empty());
}

TEST_CASE("a date that pushes another hatch out is no date", "[placement]") {
    auto farm = barn(10);  // May does not fit after April
    farm.hatches.push_back(farm.hatches[1]);
    farm.hatches[2].name = "June";
    farm.hatches[2].date = farm.hatches[0].date + days(20);
    auto const got = placed(farm);
    REQUIRE(got.unplaced.size() == 1);                                         // June finds both free from day 16 on
    CHECK(in_days(*got.unplaced[0].fits_after - farm.hatches[0].date) == 36);  // after June, not on day 16
}

TEST_CASE("sorts of brooder are apart, and hatches may name none", "[placement]") {
    auto farm = barn(0);
    auto crate = farm.brooders.at("box");
    crate.key = "crate";
    farm.brooders.emplace("crate", crate);
    farm.hatches[1].brooder = "crate";
    CHECK(placed(farm).stays.size() == 4);
    farm.hatches[1].brooder.reset();
    auto const got = placed(farm);
    CHECK(got.stays.size() == 2);
    CHECK(got.unnamed == std::vector<std::string>{"May"});
}

TEST_CASE("a hatch moves from house to house, each ready two days before", "[placement]") {
    auto farm = barn(0);
    farm.hatches.pop_back();
    auto pen = farm.brooders.at("box");
    pen.key = "pen";
    pen.count = 4;
    pen.holds = {{days(0), birds(30)}};
    pen.until = domain::longest_life;
    pen.rest.reset();
    farm.brooders.emplace("pen", pen);
    auto& hatch = farm.hatches.front();
    hatch.brooder.reset();
    hatch.housing = {{.from = days(200), .house = "box"}, {.from = days(209), .house = "pen"}};
    auto got = placed(farm);
    CHECK(got.unplaced.empty());
    REQUIRE(got.stays.size() == 6);
    auto const age = [&](domain::Moment at) { return std::round(in_days(at - hatch.date)); };
    for (std::size_t i = 0; i < 6; ++i) {
        bool const first = i < 2;
        CHECK(got.stays[i].brooder == (first ? "box" : "pen"));
        CHECK(got.stays[i].number == static_cast<int>(first ? i : i - 2) + 1);
        CHECK(in_birds(got.stays[i].birds) == (first ? 50 : 25));
        CHECK(age(got.stays[i].from) == (first ? 200 : 209));
        CHECK(age(got.stays[i].to) == (first ? 209 : 221));
        CHECK(age(got.stays[i].free_from) == (first ? 211 : 221));
        CHECK(age(got.stays[i].ready_by) == (first ? 198 : 207));
    }
    auto const plan = sample::plan_of(farm);
    REQUIRE(plan.hatches[0].stages.size() == 2);
    CHECK(plan.hatches[0].stages[0].houses == 2);
    CHECK(plan.hatches[0].stages[0].numbers == std::vector<int>{1, 2});
    CHECK(plan.hatches[0].stages[1].houses == 4);
    CHECK(plan.hatches[0].stages[1].numbers == std::vector<int>{1, 2, 3, 4});
    farm.brooders.at("pen").count = 3;  // one too few
    got = placed(farm);
    REQUIRE(got.unplaced.size() == 1);
    CHECK(got.unplaced[0].brooder == "pen");
    CHECK(got.unplaced[0].needs == 4);
    CHECK(got.unplaced[0].gets == 3);
    CHECK(in_birds(got.unplaced[0].birds) == 10);
    CHECK(sample::plan_of(farm).hatches[0].stages[1].numbers.empty());  // the plan goes on without
}

TEST_CASE("each kind has its own number in a house", "[placement]") {
    auto farm = barn(40);
    auto& box = farm.brooders.at("box");
    box.holds.clear();
    box.of_kind = {{"bobwhite", {{days(0), birds(60)}}}, {"chukar", {{days(0), birds(7)}}}};
    auto const got = placed(farm);
    REQUIRE(got.stays.size() == 4);  // 100 / 60 each
    CHECK(got.unplaced.empty());
    for (auto const& stay : got.stays) CHECK(in_birds(stay.birds) == 50);
}

TEST_CASE("houses that a farm fixes are all taken", "[placement]") {
    auto farm = barn(0);
    farm.hatches.pop_back();
    auto& hatch = farm.hatches.front();
    hatch.brooder.reset();
    farm.brooders.at("box").count = 5;
    hatch.housing = {{.from = days(0), .house = "box", .houses = 4}};
    auto const got = placed(farm);
    REQUIRE(got.stays.size() == 4);
    for (auto const& stay : got.stays) CHECK(in_birds(stay.birds) == 25);
}

TEST_CASE("a house is made ready no sooner than its last birds are out", "[placement]") {
    auto farm = barn(15);
    farm.brooders.at("box").rest = days(1);
    for (auto& hatch : farm.hatches) {
        hatch.brooder.reset();
        hatch.housing = {{.from = days(0), .house = "box"}};
        hatch.until = days(214);
    }
    auto const got = placed(farm);
    REQUIRE(got.stays.size() == 4);
    CHECK(got.unplaced.empty());
    CHECK(got.stays[2].ready_by == got.stays[0].to);  // not a day before that
}
