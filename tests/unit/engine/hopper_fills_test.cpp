// Fills of hoppers by hand, of birds that eat 1 kg a day and are all alike (sample::round_figures: 10 L hold 5 kg of
// starter to day 207, 6 kg of grower to day 221). They came at 07:00, a whole age is the morning's chore. A hopper is
// filled at the last chore before 1 in 20, the lightest of them, is empty.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include "fills.hpp"

using namespace cropful;
using namespace cropful::quantities;
using sample::all_alike;
using sample::are;
using sample::evening;

namespace {

/// What the lightest 1 in 20 of hopper fills weigh over the usual one: exp(-1.6448536 x 5 %).
double const light = std::exp(-1.6448536269514722 * 0.05);

/// On grower alone, from a hopper of so many litres, kept until this age.
domain::Farm on_grower(double volume, double until) {
    auto farm = sample::round_figures();
    farm.hatches[0].feeding = {{"grower", days(0)}};
    farm.hatches[0].until = days(until);
    farm.hoppers.at("tube").volume = litres(volume);
    return farm;
}

double added(std::vector<double> const& numbers) { return std::accumulate(numbers.begin(), numbers.end(), 0.0); }

}  // namespace

TEST_CASE("a hopper is filled at chores before it is empty, with no more than is eaten before another feed",
          "[fills]") {
    // 5 kg last the lightest 4.605 d: the evening of day 204; 2 d 13 h are left to the change. 6 kg last them 5.526 d:
    // the evenings of days 212 and 217 (until 217.985), then 3 d 13 h to the end.
    auto const hoppers = *all_alike(sample::round_figures()).hoppers();
    double const e = evening;
    CHECK_THAT(sample::ages(hoppers), are({200, 204 + e, 207, 212 + e, 217 + e}));
    CHECK_THAT(sample::contents(hoppers), are({5, 3 - e, 6, 6, 4 - e}));
    CHECK_THAT(sample::used(hoppers), are({4 + e, 3 - e, 5 + e, 5, 4 - e}));
    CHECK_THAT(sample::put_in(hoppers), are({5, 2, 6, 5 + e, 3 - e}));  // 7 kg, then 14 kg
    CHECK_THAT(sample::shares(hoppers), are({1, (3 - e) / 5, 1, 1, (4 - e) / 6}));
    CHECK_THAT(sample::fresh(hoppers), are({1, 0, 1, 0, 0}));
    CHECK_THAT(sample::would_do(hoppers), are({0, 0, 0, 0, 0}));
    sample::Numbers const until = sample::each(
        hoppers, [&](auto const& fill) { return in_days(fill.until - sample::round_figures().hatches[0].date); });
    CHECK_THAT(until, are({204 + e, 207, 212 + e, 217 + e, 221}));
    sample::Numbers const lasts = sample::each(hoppers, [](auto const& fill) { return in_days(*fill.empty_after); });
    CHECK_THAT(lasts, are({5, 3 - e, 6, 6, 4 - e}));  // as if nothing else ended the fill
}

TEST_CASE("what each hopper gives, times the hoppers, is the flock's need", "[fills]") {
    // 10 kg of starter are more than the 7 needed; 12 kg of grower last the lightest 11.052 d, the last 3 d take 3 kg.
    auto farm = sample::round_figures();
    farm.hatches.front().hoppers = 2;
    auto const hoppers = *all_alike(farm).hoppers();
    CHECK_THAT(sample::ages(hoppers), are({200, 207, 218}));
    CHECK_THAT(sample::used(hoppers), are({3.5, 5.5, 1.5}));
    CHECK_THAT(sample::put_in(hoppers), are({7, 12, 2}));
}

TEST_CASE("feed stands no longer than a fortnight under grown birds", "[fills]") {
    // 36 kg would last five weeks. A fortnight's feed is weighed for the lightest: 14 kg / 0.921, and then topped up
    // by what was eaten; the last 4 d take 4 kg. Common practice, DESIGN.md section 7.
    auto const hoppers = *all_alike(on_grower(60, 260)).hoppers();
    CHECK_THAT(sample::ages(hoppers), are({200, 214, 228, 242, 256}));
    CHECK_THAT(sample::put_in(hoppers), are({14 / light, 14, 14, 14, 4 - (14 / light - 14)}));
    CHECK_THAT(sample::shares(hoppers),
               are({14 / light / 36, 14 / light / 36, 14 / light / 36, 14 / light / 36, 4. / 36}));
}

TEST_CASE("under three weeks of age it stands no longer than a week", "[fills]") {
    auto farm = sample::farm_from(sample::bobwhites());  // from 07:00; grower from day 42, to day 112
    farm.hoppers.at("tube").volume = litres(1000);
    CHECK_THAT(sample::ages(*sample::plan_of(farm).hatches[0].hoppers()), are({0, 7, 14, 21, 35, 42, 56, 70, 84, 98}));
    farm.hoppers.at("tube").at_most = days(30);
    CHECK_THAT(sample::ages(*sample::plan_of(farm).hatches[0].hoppers()), are({0, 30, 42, 72, 102}));
    farm.hoppers.at("tube").at_most = days(12.4);  // 12 d 9.6 h: the last chore not later is the morning's
    CHECK_THAT(sample::ages(*sample::plan_of(farm).hatches[0].hoppers()),
               are({0, 12, 24, 36, 42, 54, 66, 78, 90, 102}));
}

TEST_CASE("for so many days: what a flock needs till then, and at the end no more than is eaten", "[fills]") {
    // 5 kg weighed for the lightest are 5.429 kg; of 7 kg of starter 1.571 are left to put in, of 14 kg of grower
    // 5.429, then 5 to the same level, then the rest.
    auto farm = sample::round_figures();
    farm.hoppers.at("tube").volume = litres(20);
    farm.hoppers.at("tube").fill_for = days(5);
    auto const hoppers = *all_alike(farm).hoppers();
    double const five = 5 / light;
    CHECK_THAT(sample::ages(hoppers), are({200, 205, 207, 212, 217}));
    CHECK_THAT(sample::put_in(hoppers), are({five, 7 - five, five, 5, 9 - five}));
    CHECK_THAT(sample::contents(hoppers), are({five, 2, five, five, 4}));
    CHECK_THAT(sample::shares(hoppers), are({five / 10, 0.2, five / 12, five / 12, 4. / 12}));
    CHECK_THAT(added(sample::put_in(hoppers)), Catch::WithinRel(21.0, 1e-9));
}

TEST_CASE("for more days than it holds feed for: to the brim, and in time", "[fills]") {
    auto farm = sample::round_figures();
    auto const plain = *all_alike(farm).hoppers();
    farm.hoppers.at("tube").fill_for = days(6.5);
    auto const hoppers = *all_alike(farm).hoppers();
    CHECK_THAT(sample::ages(hoppers), are(sample::ages(plain)));
    CHECK_THAT(sample::put_in(hoppers), are(sample::put_in(plain)));
}

TEST_CASE("feed out of reach goes in once for each feed and each hopper", "[fills]") {
    // 4 of 5 kg and 4.8 of 6 can be reached: 3.684 d and 4.421 d for the lightest.
    auto farm = sample::round_figures();
    farm.hoppers.at("tube").stays_behind = 0.2;
    auto plan = engine::make_plan(farm, sample::without_spread(farm));
    auto const& hoppers = *plan.hatches[0].hoppers();
    double const e = evening;
    CHECK_THAT(sample::ages(hoppers), are({200, 203 + e, 207, 211, 215, 219}));
    CHECK_THAT(sample::put_in(hoppers), are({4 + 1, 3, 4.8 + 1.2, 4, 4, 2 - 0.8}));
    CHECK_THAT(sample::shares(hoppers), are({1, (5 - e) / 5, 1, 1, 1, (2 + 1.2) / 6}));
    REQUIRE(plan.feeds.size() == 2);
    CHECK_THAT(in_kilograms(plan.feeds[0].stays_behind), Catch::WithinRel(1.0, 1e-9));
    CHECK_THAT(in_kilograms(plan.feeds[1].stays_behind), Catch::WithinRel(1.2, 1e-9));
    CHECK_THAT(in_kilograms(plan.feeds[0].put_in), Catch::WithinRel(7.0, 1e-9));
    CHECK_THAT(in_kilograms(plan.feeds[1].put_in), Catch::WithinRel(14.0, 1e-9));
    farm.hatches[0].hoppers = 3;
    plan = engine::make_plan(farm, sample::without_spread(farm));
    CHECK_THAT(in_kilograms(plan.feeds[0].stays_behind), Catch::WithinRel(3.0, 1e-9));
}

TEST_CASE("a hopper that cannot reach the next chore: how many would", "[fills]") {
    // 0.6 kg last the lightest 13.26 h, to the evening's chore but hardly to the morning's: 13 h. 0.5 kg last 11.05 h
    // and not the night: 13 h weighed for the lightest take 0.588 kg.
    auto farm = on_grower(1, 202);
    CHECK_THAT(sample::would_do(*all_alike(farm).hoppers()), are({0, 0, 0, 0}));
    farm.feeds.at("grower").density = kilograms_per_litre(0.5);
    auto const hoppers = *all_alike(farm).hoppers();
    CHECK_THAT(sample::ages(hoppers), are({200, 200 + evening, 201, 201 + evening}));
    CHECK_THAT(sample::would_do(hoppers), are({0, 2, 0, 2}));
    farm.feeds.at("grower").density = kilograms_per_litre(0.2);  // 0.458 kg / 0.921 by day: 3
    CHECK_THAT(sample::would_do(*all_alike(farm).hoppers()), are({3, 3, 3, 3}));
}

TEST_CASE("feed that changes when a fill is due is filled once", "[fills]") {
    auto farm = sample::round_figures();
    farm.hoppers.at("tube").volume = litres(20);
    farm.hoppers.at("tube").fill_for = days(5);
    double const change = 205 + GENERATE(-1e-8, -1e-11, 0.0, 1e-11);
    farm.hatches.front().feeding[1].from = days(change);
    auto const filled = sample::ages(*all_alike(farm).hoppers());
    CHECK(std::count_if(filled.begin(), filled.end(), [=](double age) { return std::abs(age - change) < 1e-6; }) == 1);
}

TEST_CASE("birds that come at an hour that is no chore find their hopper full, and it is filled at chores", "[fills]") {
    auto farm = sample::round_figures();
    farm.hatches[0].date = farm.hatches[0].date + days(-7 / 24.0);  // at midnight
    auto const hoppers = *all_alike(farm).hoppers();
    CHECK(hoppers.fills[0].at.iso() == "2027-10-22T00:00");
    CHECK(hoppers.fills[0].do_at.iso() == "2027-10-21T18:00");
    // 4.605 d after midnight: 14:31, so 07:00 of that day
    CHECK(hoppers.fills[1].at.iso() == "2027-10-26T07:00");
    CHECK(hoppers.fills[1].do_at.iso() == "2027-10-26T07:00");
    CHECK(hoppers.fills[2].at.iso() == "2027-10-29T00:00");  // the feed changes
    CHECK(hoppers.fills[2].do_at.iso() == "2027-10-28T18:00");
}

TEST_CASE("in a window the hopper holds what is left of the fill before, and the last fill ends with it", "[fills]") {
    // 5 kg of day 200 are 2 kg on day 203; to the change 2 kg more are put in, and 4 kg of grower to day 211.
    auto const farm = sample::round_figures();
    auto const date = farm.hatches.front().date;
    auto const plan = engine::make_plan(farm, sample::without_spread(farm), {date + days(203), date + days(211)});
    auto const& hoppers = *plan.hatches[0].hoppers();
    CHECK_THAT(sample::ages(hoppers), are({204 + evening, 207}));
    CHECK_THAT(sample::put_in(hoppers), are({2, 4}));
    REQUIRE(plan.feeds.size() == 2);
    CHECK_THAT(in_kilograms(plan.feeds[0].in_hoppers), Catch::WithinRel(2.0, 1e-9));
    CHECK_THAT(in_kilograms(plan.feeds[0].put_in), Catch::WithinRel(2.0, 1e-9));
    CHECK_THAT(in_kilograms(plan.feeds[0].band.p95), Catch::WithinRel(4.0, 1e-9));
    CHECK_THAT(in_kilograms(plan.feeds[1].in_hoppers), Catch::WithinAbs(0, 1e-12));
    CHECK_THAT(in_kilograms(plan.feeds[1].put_in), Catch::WithinRel(4.0, 1e-9));
}

TEST_CASE("a window that begins with a fill counts what it is put upon", "[fills]") {
    auto const farm = sample::round_figures();
    auto const from = farm.hatches.front().date + days(204 + evening + GENERATE(-1e-11, 0.0, 1e-11));
    auto const feed = engine::make_plan(farm, sample::without_spread(farm), {from, {}}).feeds.at(0);
    CHECK_THAT(in_kilograms(feed.in_hoppers), Catch::WithinRel(1 - evening, 1e-9));
    CHECK_THAT(in_kilograms(feed.put_in), Catch::WithinRel(2.0, 1e-9));
}

TEST_CASE("what hoppers hold is not bought again, what stays behind is bought as well", "[fills]") {
    auto farm = on_grower(20, 221);  // 12 kg, 2.4 of them out of reach; 21 kg are eaten
    farm.hoppers.at("tube").stays_behind = 0.2;
    farm.feeds.at("grower").bag = kilograms(1);
    CHECK(engine::make_plan(farm, sample::without_spread(farm)).feeds[0].safe_bags.p95 == 24);  // 23.4 kg
    auto const from = farm.hatches[0].date + days(205);
    auto const feed = engine::make_plan(farm, sample::without_spread(farm), {from, {}}).feeds[0];
    CHECK_THAT(in_kilograms(feed.in_hoppers), Catch::WithinRel(4.6, 1e-9));  // 9.6 kg less 5 eaten
    CHECK_THAT(in_kilograms(feed.stays_behind), Catch::WithinAbs(0, 1e-12));
    CHECK(feed.safe_bags.p95 == 12);  // 16 kg less 4.6
}
