// Laws a plan must keep whatever the figures in the tables are.
#include <catch2/catch.hpp>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

double feed_kg(engine::Plan const& plan) {
    double sum = 0;
    for (auto const& hatch : plan.hatches) {
        for (auto const& feed : hatch.feeds) sum += in_kilograms(feed.amount);
    }
    return sum;
}

domain::Farm adults(double count, int hoppers) {
    auto farm = sample::farm_from(sample::bobwhites());
    auto& hatch = farm.hatches.front();
    hatch.chicks = birds(count);
    hatch.first_age = days(200);  // past the last knot of every curve: intake and survival are constant
    hatch.until = days(300);
    hatch.removed.clear();
    hatch.hoppers = hoppers;
    return farm;
}

Catch::Matchers::Floating::WithinRelMatcher like(double x) { return Catch::WithinRel(x, 1e-12); }

}  // namespace

TEST_CASE("twice the birds empty a hopper in half the days", "[laws]") {
    auto const few = sample::plan_of(adults(100, 1)), many = sample::plan_of(adults(200, 1));
    CHECK_THAT(in_days(*few.hatches[0].hoppers()->fills[0].empty_after),
               like(2 * in_days(*many.hatches[0].hoppers()->fills[0].empty_after)));
}

TEST_CASE("twice the birds at twice the hoppers last as long, at any age", "[laws]") {
    auto farm = sample::farm_from(sample::bobwhites());
    auto const once = sample::plan_of(farm);
    auto& hatch = farm.hatches.front();
    *hatch.chicks *= 2.0;
    for (auto& removal : hatch.removed) removal.birds *= 2.0;
    hatch.hoppers *= 2;
    auto const twice = sample::plan_of(farm);
    auto const& a = once.hatches[0].hoppers()->fills;
    auto const& b = twice.hatches[0].hoppers()->fills;
    REQUIRE(a.size() == b.size());
    REQUIRE(a.size() > 5);
    for (std::size_t i = 0; i < a.size(); ++i) CHECK_THAT(in_days(*a[i].empty_after), like(in_days(*b[i].empty_after)));
    CHECK_THAT(feed_kg(twice), like(2 * feed_kg(once)));
}

TEST_CASE("to split a flock takes no more from its doubt than the flocks' own part", "[laws]") {
    // What a kind's table does not know is the same for all its flocks: at least half of the variance, 0.85 where
    // its weeks are a growth model's. With all the rest gone, sqrt(1/2) and sqrt(0.85) of the doubt are left.
    auto const [kind, shared] = GENERATE(std::pair("bobwhite", 0.5), std::pair("pheasant", 0.85));
    auto whole = sample::farm_from(sample::bobwhites());
    auto& hatch = whole.hatches.front();
    hatch.kind = kind;
    hatch.chicks = birds(3000);
    hatch.removed.clear();
    auto houses = whole;
    hatch.hoppers = hatch.drinkers = 1000;
    houses.hatches.clear();
    for (int house = 1; house <= 30; ++house) {
        houses.hatches.push_back(whole.hatches.front());
        houses.hatches.back().name = "house " + std::to_string(house);
        houses.hatches.back().chicks = birds(100);
    }
    auto const doubt = [](domain::Farm const& farm) {
        auto const plan = sample::plan_of(farm);
        double usual = 0, sure = 0;
        for (auto const& feed : plan.feeds) usual += in_kilograms(feed.band.p50), sure += in_kilograms(feed.band.p95);
        return std::log(sure / usual);
    };
    double const one = doubt(whole), thirty = doubt(houses);
    CHECK(thirty < one);
    CHECK(thirty > 0.99 * std::sqrt(shared) * one);  // 1 % for the worlds drawn
    CHECK(thirty < 1.05 * std::sqrt(shared + (1 - shared) / 30) * one);
}

TEST_CASE("metric and US farm files give the same answer", "[laws]") {
    auto const us = sample::plan_of(sample::bobwhites()), metric = sample::plan_of(sample::bobwhites_metric());
    auto const close = [](double x) { return Catch::WithinRel(x, 1e-9); };  // 38 lb/ft3 is typed to 11 digits
    CHECK_THAT(feed_kg(us), close(feed_kg(metric)));
    CHECK(us.bags == metric.bags);
    auto const& a = us.hatches[0].hoppers()->fills;
    auto const& b = metric.hatches[0].hoppers()->fills;
    REQUIRE(a.size() == b.size());
    for (std::size_t i = 0; i < a.size(); ++i) CHECK_THAT(in_days(a[i].age), close(in_days(b[i].age)));
}

TEST_CASE("refills add up to the total feed", "[laws]") {
    auto const plan = sample::plan_of(sample::bobwhites());
    auto const& hoppers = *plan.hatches[0].hoppers();
    Mass sum = kilograms(0);
    for (auto const& fill : hoppers.fills) {
        sum += fill.used * static_cast<double>(hoppers.count);
        CHECK(in_kilograms(fill.used) <= in_kilograms(fill.content) * (1 + 1e-12));
    }
    CHECK_THAT(in_kilograms(sum), like(feed_kg(plan)));
}

TEST_CASE("hatches, feeds and removals may stand in any order", "[laws]") {
    auto text = sample::bobwhites();
    std::string const hatch = text.substr(text.find("[[hatch]]"));
    auto second = hatch;
    second.replace(second.find("April"), 5, "May");
    second.replace(second.find("2027-04-05"), 10, "2027-05-03");
    std::string const removed = "removed = [{ at = \"8 wk\", birds = 60 }]";
    second.replace(second.find(removed), removed.size(),
                   "removed = [{ at = \"10 wk\", birds = 20 }, { at = \"8 wk\", birds = 30 }]");
    std::string const rest = text.substr(0, text.find("[[hatch]]"));
    auto const one = sample::plan_of(rest + hatch + second), other = sample::plan_of(second + hatch + rest);
    CHECK(feed_kg(one) == feed_kg(other));
    CHECK(one.bags == other.bags);
    CHECK(in_money(one.cost) == in_money(other.cost));
    CHECK(other.hatches[0].hatch.name == "April");
}

TEST_CASE("the plan in two windows equals the plan in one", "[laws]") {
    auto const farm = sample::farm_from(sample::bobwhites());
    double const split = GENERATE(0.5, 3.0, 41.9, 42.0, 56.0, 100.25);
    auto const at = farm.hatches[0].date + days(split);
    auto const before = sample::plan_of(farm, {{}, at}), after = sample::plan_of(farm, {at, {}});
    CHECK_THAT(feed_kg(before) + feed_kg(after), like(feed_kg(sample::plan_of(farm))));
}

TEST_CASE("a hatch's bags add up to the farm's", "[laws]") {
    auto text = sample::bobwhites();
    auto second = text.substr(text.find("[[hatch]]"));
    second.replace(second.find("April"), 5, "June");
    second.replace(second.find("2027-04-05"), 10, "2027-06-07");
    auto const plan = sample::plan_of(text + second);
    int bags = 0;
    for (auto const& hatch : plan.hatches) {
        for (auto const& feed : hatch.feeds) bags += feed.bags;
    }
    CHECK(bags == plan.bags);
    for (auto const& feed : plan.feeds) {
        double const bought = feed.bags * in_kilograms(*feed.bag) + in_kilograms(feed.on_hand);
        double const asked = in_kilograms(feed.need + feed.stays_behind);  // out of reach in the hoppers
        CHECK(bought >= asked);
        CHECK(bought - in_kilograms(*feed.bag) < asked);
    }
}
