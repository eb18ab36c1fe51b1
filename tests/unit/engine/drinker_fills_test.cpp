// Fills of drinkers and what is stirred into them, by hand, of birds that drink 2 L a day and are all alike
// (sample::round_figures: a drinker of 4 L). They came at 07:00, a whole age is the morning's chore.
#include <catch2/catch.hpp>
#include <cmath>

#include "cautions.hpp"
#include "fills.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::WithinRel;
using sample::all_alike;
using sample::are;
using sample::evening;

namespace {

/// The birds to day 208, and a liquid of which a batch is half a litre, one, two or any more whole ones.
domain::Farm with_tonic(double from, int days_long) {
    auto farm = sample::round_figures();
    farm.measures = Measures::metric;
    domain::Supplement tonic;
    tonic.key = tonic.title = "tonic";
    tonic.rate = parse_rate("5 mL per L");
    tonic.from = days(from);
    tonic.days_long = days_long;
    farm.supplements.emplace("tonic", tonic);
    farm.hatches[0].supplement = "tonic";
    farm.hatches[0].until = days(208);
    return farm;
}

template <class Get>
sample::Numbers of_batches(engine::Mix const& mix, Get get) {
    sample::Numbers numbers;
    for (auto const& batch : mix.batches) numbers.push_back(get(batch));
    return numbers;
}

sample::Numbers batch_ages(engine::Mix const& mix) {
    return of_batches(mix, [](auto const& batch) { return in_days(batch.age); });
}

sample::Numbers batch_waters(engine::Mix const& mix) {
    return of_batches(mix, [](auto const& batch) { return in_litres(batch.dose.water); });
}

sample::Numbers batch_shares(engine::Mix const& mix) {
    return of_batches(mix, [](auto const& batch) { return in_litres(batch.each_drinker); });
}

sample::Numbers batch_rest(engine::Mix const& mix) {
    return of_batches(mix, [](auto const& batch) { return in_litres(batch.thrown); });
}

}  // namespace

TEST_CASE("drinkers are filled at the last chore before they are dry", "[fills]") {
    auto farm = sample::round_figures();
    farm.hatches[0].until = days(205);
    auto drinkers = *all_alike(farm).drinkers();
    CHECK_THAT(sample::ages(drinkers), are({200, 202, 204}));
    CHECK_THAT(sample::used(drinkers), are({4, 4, 2}));
    CHECK_FALSE(drinkers.fills[0].change_after);
    farm.drinkers.at("bell").volume = litres(3.5);  // 1 d 18 h: the evening's chore
    drinkers = *all_alike(farm).drinkers();
    double const e = evening;
    CHECK_THAT(sample::ages(drinkers), are({200, 201 + e, 203, 204 + e}));
    CHECK_THAT(sample::used(drinkers), are({2 + 2 * e, 4 - 2 * e, 2 + 2 * e, 2 - 2 * e}));
}

TEST_CASE("three drinkers last three times as long", "[fills]") {
    auto farm = sample::round_figures();
    farm.hatches[0].drinkers = 3;
    auto const drinkers = *all_alike(farm).drinkers();
    CHECK_THAT(sample::ages(drinkers), are({200, 206, 212, 218}));
    CHECK_THAT(sample::used(drinkers), are({4, 4, 4, 2}));  // 3 x 14 = 42 L
    CHECK_THAT(sample::put_in(drinkers), are({12, 12, 12, 12}));
}

TEST_CASE("water is changed at the last chore that is not later than its time", "[fills]") {
    // 36 h after 07:00 are 19:00: the evening's chore; 36 h after that are 06:00: the evening's chore again.
    auto farm = sample::round_figures();
    farm.hatches[0].until = days(205);
    farm.drinkers.at("bell").change_every = days(1.5);
    auto const drinkers = *all_alike(farm).drinkers();
    double const e = evening;
    CHECK_THAT(sample::ages(drinkers), are({200, 201 + e, 202 + e, 203 + e, 204 + e}));
    CHECK_THAT(sample::used(drinkers), are({2 + 2 * e, 2, 2, 2, 2 - 2 * e}));
    CHECK_THAT(sample::fresh(drinkers), are({1, 1, 1, 1, 1}));
    CHECK_THAT(in_days(*drinkers.fills[0].change_after), WithinRel(1.5, 1e-9));
    CHECK_THAT(in_days(*drinkers.fills[0].empty_after), WithinRel(2.0, 1e-9));
    for (auto const& fill : drinkers.fills) CHECK(fill.at == fill.do_at);
}

TEST_CASE("between two changes drinkers are topped up by what was drunk", "[fills]") {
    // 5 L last 2 d 12 h: the evening of the second day, when 4.917 L are gone; on the third the water is due.
    auto farm = sample::round_figures();
    farm.hatches[0].until = days(206);
    farm.drinkers.at("bell").volume = litres(5);
    farm.drinkers.at("bell").change_every = days(3);
    auto const drinkers = *all_alike(farm).drinkers();
    double const e = evening;
    CHECK_THAT(sample::ages(drinkers), are({200, 202 + e, 203, 205 + e}));
    CHECK_THAT(sample::fresh(drinkers), are({1, 0, 1, 0}));
    CHECK_THAT(sample::put_in(drinkers), are({5, 4 + 2 * e, 5, 4 + 2 * e}));
    CHECK_THAT(sample::contents(drinkers), are({5, 5, 5, 5}));
    CHECK_THAT(in_days(*drinkers.fills[1].change_after), WithinRel(1 - e, 1e-9));
}

TEST_CASE("a drinker that cannot reach the next chore: how many would", "[fills]") {
    // 0.917 L by day, 1.083 L by night
    auto farm = sample::round_figures();
    farm.hatches[0].until = days(202);
    auto const [volume, by_day, by_night] =
        GENERATE(table<double, double, double>({{0.5, 2, 3}, {1.0, 0, 2}, {1.1, 0, 0}, {0.2, 5, 6}}));
    farm.drinkers.at("bell").volume = litres(volume);
    auto const drinkers = *all_alike(farm).drinkers();
    CHECK_THAT(sample::ages(drinkers), are({200, 200 + evening, 201, 201 + evening}));
    CHECK_THAT(sample::would_do(drinkers), are({by_day, by_night, by_day, by_night}));
}

TEST_CASE("plain water makes way for the course, each batch for the next", "[fills]") {
    auto const plan = all_alike(with_tonic(203, 2));  // a day where no life is stated
    CHECK_THAT(sample::ages(*plan.drinkers()), are({200, 202, 203, 204, 205, 207}));
    CHECK_THAT(sample::contents(*plan.drinkers()), are({4, 4, 2, 2, 4, 4}));
    CHECK_THAT(sample::used(*plan.drinkers()), are({4, 2, 2, 2, 4, 2}));
    CHECK_THAT(sample::fresh(*plan.drinkers()), are({1, 0, 1, 1, 1, 0}));
    REQUIRE(plan.mix());
    CHECK_THAT(batch_ages(*plan.mix()), are({203, 204}));
    CHECK_THAT(batch_waters(*plan.mix()), are({2, 2}));
    CHECK_THAT(batch_shares(*plan.mix()), are({2, 2}));
    CHECK_THAT(batch_rest(*plan.mix()), are({0, 0}));
    CHECK_THAT(in_millilitres(*plan.mix()->total.by_volume), WithinRel(20.0, 1e-9));
}

TEST_CASE("courses begin and end at chores", "[fills]") {
    CHECK_THAT(batch_ages(*all_alike(with_tonic(203.3, 2)).mix()),
               are({203, 204}));                            // 14:12 is past the morning's chore
    auto const evenings = all_alike(with_tonic(203.5, 2));  // 19:00
    CHECK_THAT(batch_ages(*evenings.mix()), are({203 + evening, 204 + evening}));
    CHECK_THAT(sample::ages(*evenings.drinkers()),
               are({200, 202, 203 + evening, 204 + evening, 205 + evening, 207 + evening}));
}

TEST_CASE("a solution that keeps 12 h is made at every chore, and stands an hour too long at night", "[fills]") {
    // 0.917 L by day are poured as 0.95 of 1 L, 1.083 L by night as 1.1 of 2 L.
    auto farm = with_tonic(203, 2);
    farm.supplements.at("tonic").keeps = days(0.5);
    auto const plan = all_alike(farm);
    double const e = evening;
    CHECK_THAT(batch_ages(*plan.mix()), are({203, 203 + e, 204, 204 + e}));
    CHECK_THAT(sample::ages(*plan.drinkers()), are({200, 202, 203, 203 + e, 204, 204 + e, 205, 207}));
    CHECK_THAT(of_batches(*plan.mix(), [](auto const& batch) { return in_days(batch.lasts); }),
               are({e, 1 - e, e, 1 - e}));
    CHECK_THAT(of_batches(*plan.mix(), [](auto const& batch) { return in_litres(batch.drunk_p95); }),
               are({2 * e, 2 - 2 * e, 2 * e, 2 - 2 * e}));
    CHECK_THAT(batch_waters(*plan.mix()), are({1, 2, 1, 2}));
    CHECK_THAT(batch_shares(*plan.mix()), are({0.95, 1.1, 0.95, 1.1}));
    CHECK_THAT(batch_rest(*plan.mix()), are({0.05, 0.9, 0.05, 0.9}));
    CHECK_THAT(in_millilitres(*plan.mix()->total.by_volume), WithinRel(30.0, 1e-9));
    CHECK(sample::states(farm, "solution-life", {{"keeps", days(0.5)}}));
    farm.supplements.at("tonic").keeps = days(13.1 / 24);
    CHECK_FALSE(sample::due(farm, "solution-life"));
}

TEST_CASE("a batch is for what troughs need besides, and each drinker gets its share", "[fills]") {
    // 2 L and 0.3 L for each of two troughs: 2.6 L of a batch of 3, 1.3 in each.
    auto farm = with_tonic(203, 1);
    farm.hatches[0].drinkers = 2;
    farm.drinkers.at("bell").least = litres(0.3);
    auto const plan = all_alike(farm);
    CHECK_THAT(batch_waters(*plan.mix()), are({3}));
    CHECK_THAT(batch_shares(*plan.mix()), are({1.3}));
    CHECK_THAT(batch_rest(*plan.mix()), are({0.4}));
}

TEST_CASE("a batch is for the thirsty flock, not the usual one", "[fills]") {
    // What a grown flock drinks is a product of two independent lognormals, of which low and high are the 5 % and 95 %
    // points: 1.644853627 standard deviations to either side.
    auto const farm = with_tonic(203, 1);
    auto const kind = readers::RationsReader().load(farm).kinds.at("bobwhite");
    auto const eats = kind.growing.curve.rows().back();
    auto const& drinks = kind.water.ratio;
    double const sd = std::hypot(std::log(eats.high / eats.low), std::log(drinks[2] / drinks[0])) / (2 * 1.644853627);
    auto const mix = *sample::plan_of(farm).hatches[0].mix();
    CHECK_THAT(in_litres(mix.batches[0].drunk), WithinRel(2.0, 1e-9));
    CHECK_THAT(in_litres(mix.batches[0].drunk_p95), WithinRel(2 * std::exp(1.644853627 * sd), 1e-3));
    CHECK_THAT(batch_waters(mix), are({3}));
    CHECK_THAT(batch_shares(mix), are({2.75}));  // 2.57 L in quarters of a litre
}

TEST_CASE("a course that fills the drinkers", "[fills]") {
    auto farm = with_tonic(203, 1);
    farm.supplements.at("tonic").fills_drinkers = true;
    farm.hatches[0].drinkers = 2;
    auto const plan = all_alike(farm);
    CHECK_THAT(batch_waters(*plan.mix()), are({8}));
    CHECK_THAT(batch_shares(*plan.mix()), are({4}));
    CHECK_THAT(batch_rest(*plan.mix()), are({0}));
    CHECK_THAT(in_millilitres(*plan.mix()->total.by_volume), WithinRel(40.0, 1e-9));
    CHECK_THAT(sample::shares(*plan.drinkers()), are({1, 1, 1}));
}

TEST_CASE("one course after the other, and the one that comes next is the hatch's", "[fills]") {
    auto farm = with_tonic(0, 0);
    auto& hatch = farm.hatches[0];
    hatch.supplement.reset();
    auto second = farm.supplements.at("tonic");
    second.key = second.title = "other";
    farm.supplements.emplace("other", second);
    hatch.courses = {{"tonic", days(201), 1}, {"other", days(203), 2}, {"tonic", days(206), 1}};
    auto plan = all_alike(farm);
    REQUIRE(plan.mixes.size() == 3);
    CHECK_THAT(batch_ages(plan.mixes[0]), are({201}));
    CHECK_THAT(batch_ages(plan.mixes[1]), are({203, 204}));
    CHECK_THAT(batch_ages(plan.mixes[2]), are({206}));
    CHECK(plan.mix()->supplement == "tonic");
    CHECK(plan.mix()->from == days(201));
    CHECK_THAT(sample::ages(*plan.drinkers()), are({200, 201, 202, 203, 204, 205, 206, 207}));
    plan = all_alike(farm, {hatch.date + days(202.5), {}});
    REQUIRE(plan.mixes.size() == 3);
    CHECK(plan.mixes[0].batches.empty());
    CHECK(plan.mix()->supplement == "other");
}

TEST_CASE("in a window drinkers go on as they were", "[fills]") {
    auto const farm = sample::round_figures();
    auto const date = farm.hatches.front().date;
    CHECK_THAT(sample::ages(*all_alike(farm, {date + days(203), date + days(211)}).drinkers()),
               are({204, 206, 208, 210}));
}
