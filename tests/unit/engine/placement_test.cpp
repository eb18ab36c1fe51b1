// Which brooder holds which hatch, worked by hand. Bobwhites past the last knots neither die nor grow, so that their
// number is what is written: two hatches of 100 grown birds, each 14 days in boxes for 60, two boxes, 2 days of rest.
#include "cropful/engine/placement.hpp"

#include <catch2/catch.hpp>

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
    return engine::place(farm, readers::RationsReader().load(farm), engine::Fits::sought);
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
