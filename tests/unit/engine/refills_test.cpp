// Fills by hand, of birds that eat 1 kg and drink 2 L a day (sample::round_figures) and are all alike. A hopper is
// filled again when 1 in 20, the lightest of them, is empty.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

using Numbers = std::vector<double>;

/// What the lightest 1 in 20 of hopper fills weigh over the usual one: exp(-1.6448536 x 5 %).
double const light = std::exp(-1.6448536269514722 * 0.05);

engine::HatchPlan plan_of(domain::Farm const& farm, engine::Window window = {}) {
    return engine::make_plan(farm, sample::without_spread(farm), window).hatches.at(0);
}

template <class Amount, class Get>
Numbers each(engine::Vessels<Amount> const& vessels, Get get) {
    Numbers numbers;
    for (auto const& fill : vessels.fills) numbers.push_back(get(fill));
    return numbers;
}

Numbers ages(auto const& vessels) {
    return each(vessels, [](auto const& fill) { return in_days(fill.age); });
}

Numbers used(engine::Vessels<Mass> const& hoppers) {
    return each(hoppers, [](auto const& fill) { return in_kilograms(fill.used); });
}

Numbers used(engine::Vessels<Volume> const& drinkers) {
    return each(drinkers, [](auto const& fill) { return in_litres(fill.used); });
}

Catch::Matchers::Vector::ApproxMatcher<double, std::allocator<double>, std::allocator<double>> are(
    Numbers const& expected) {
    return Catch::Approx(expected).epsilon(1e-9);
}

}  // namespace

TEST_CASE("a change of feed starts a fill; what is used adds up", "[refills]") {
    // 10 L hold 5 kg of starter or 6 kg of grower: 5 days at most, a fill cut by the change at 207, then 6 days and 6.
    auto const hoppers = *plan_of(sample::round_figures()).hoppers;
    CHECK_THAT(ages(hoppers), are({200, 200 + 5 * light, 207, 207 + 6 * light, 207 + 12 * light}));
    CHECK_THAT(used(hoppers), are({5 * light, 7 - 5 * light, 6 * light, 6 * light, 14 - 12 * light}));
    Numbers const contents = each(hoppers, [](auto const& fill) { return in_kilograms(fill.content); });
    CHECK_THAT(contents, are({5, 5, 6, 6, 6}));
    Numbers const lasts = each(hoppers, [](auto const& fill) { return in_days(*fill.empty_after); });
    CHECK_THAT(lasts, are({5, 5, 6, 6, 6}));  // as if nothing else ended the fill
}

TEST_CASE("what each vessel gives, times the vessels, is the flock's need", "[refills]") {
    auto farm = sample::round_figures();
    farm.hatches.front().hoppers = 2;
    farm.hatches.front().drinkers = 3;
    auto const plan = plan_of(farm);
    CHECK_THAT(ages(*plan.hoppers), are({200, 207, 207 + 12 * light}));
    CHECK_THAT(used(*plan.hoppers), are({3.5, 6 * light, 7 - 6 * light}));  // 2 x 10.5 = 21 kg
    CHECK_THAT(ages(*plan.drinkers), are({200, 206, 212, 218}));
    CHECK_THAT(used(*plan.drinkers), are({4, 4, 4, 2}));  // 3 x 14 = 42 L
}

TEST_CASE("a drinker is done again at its change or when dry", "[refills]") {
    auto farm = sample::round_figures();
    farm.hatches.front().until = days(205);
    CHECK_THAT(ages(*plan_of(farm).drinkers), are({200, 202, 204}));
    CHECK_FALSE(plan_of(farm).drinkers->fills[0].change_after);
    farm.drinkers.at("bell").change_every = days(1.5);
    auto const drinkers = *plan_of(farm).drinkers;
    CHECK_THAT(ages(drinkers), are({200, 201.5, 203, 204.5}));
    CHECK_THAT(used(drinkers), are({3, 3, 3, 1}));
    CHECK_THAT(in_days(*drinkers.fills[0].change_after), Catch::WithinRel(1.5, 1e-12));
    CHECK_THAT(in_days(*drinkers.fills[0].empty_after), Catch::WithinRel(2.0, 1e-9));
}

TEST_CASE("a hopper that is empty just when the feed changes is filled once", "[refills]") {
    auto farm = sample::round_figures();
    double const change = 200 + 5 * light * GENERATE(1, 2, 3);  // after so many fills of starter
    farm.hatches.front().feeding[1].from = days(change);
    auto const filled = ages(*plan_of(farm).hoppers);
    CHECK(std::count_if(filled.begin(), filled.end(), [=](double age) { return std::abs(age - change) < 1e-6; }) == 1);
}

TEST_CASE("so is one whose emptying arithmetic puts a hair before the change", "[refills]") {
    auto farm = sample::round_figures();
    farm.hoppers.begin()->second.volume = litres(0.6);
    farm.hatches.front().feeding[1].from = days(200 + 0.9 * light);  // the sum of three fills
    auto const plan = plan_of(farm);
    for (auto const& fill : plan.hoppers->fills) {
        INFO("day " << in_days(fill.age));
        CHECK(in_days(*fill.empty_after) > 0.01);
        CHECK(in_kilograms(fill.used) > 1e-6);
    }
}

TEST_CASE("in a window every vessel is full at its start and the last fill ends with it", "[refills]") {
    auto const farm = sample::round_figures();
    auto const date = farm.hatches.front().date;
    auto const plan = plan_of(farm, {date + days(203), date + days(211)});
    CHECK_THAT(ages(*plan.hoppers), are({203, 207}));
    CHECK_THAT(used(*plan.hoppers), are({4, 4}));
    CHECK_THAT(ages(*plan.drinkers), are({203, 205, 207, 209}));
}

TEST_CASE("solutions: plain water makes way for the course, each mix for the next", "[refills]") {
    auto farm = sample::round_figures();
    domain::Supplement tonic;
    tonic.key = "tonic";
    tonic.rate = parse_rate("1 g per L");
    tonic.from = days(203);
    tonic.days_long = 2;
    farm.supplements.emplace("tonic", tonic);
    farm.hatches.front().supplement = "tonic";
    farm.hatches.front().until = days(208);
    auto const plan = plan_of(farm);
    CHECK_THAT(ages(*plan.drinkers), are({200, 202, 203, 204, 205, 207}));  // a day where no life is stated
    CHECK_THAT(used(*plan.drinkers), are({4, 2, 2, 2, 4, 2}));
    CHECK(plan.mix->batches.size() == 2);
    farm.supplements.at("tonic").keeps = days(0.75);  // the last mix is cut by the end of the course
    CHECK_THAT(ages(*plan_of(farm).drinkers), are({200, 202, 203, 203.75, 204.5, 205, 207}));
    CHECK(plan_of(farm).mix->batches.size() == 3);
}
