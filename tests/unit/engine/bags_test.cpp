// Bags, packs and cost by hand, of birds that eat 1 kg and drink 2 L a day for 21 days (sample::round_figures).
#include <catch2/catch.hpp>
#include <cmath>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

/// Two such hatches, a month apart, on grower alone; a bag of 40 kg costs 30.
domain::Farm two_hatches() {
    auto farm = sample::round_figures();
    farm.hatches.front().feeding = {{"grower", days(0)}};
    farm.hatches.push_back(farm.hatches.front());
    farm.hatches[1].name = "May";
    farm.hatches[1].date = farm.hatches[0].date + days(30);
    return farm;
}

/// For 5 days; weighed to 10 mg and stirred into whole litres, which are what flocks that are all alike drink a day.
domain::Supplement& give(domain::Farm& farm, std::string const& rate) {
    farm.measures = Measures::metric;
    farm.scale_step = kilograms(1e-5);
    domain::Supplement tonic;
    tonic.key = "tonic";
    tonic.rate = parse_rate(rate);
    tonic.from = days(200);
    tonic.days_long = 5;  // 10 L a hatch
    tonic.price = money(9);
    for (auto& hatch : farm.hatches) hatch.supplement = "tonic";
    return farm.supplements.insert_or_assign("tonic", tonic).first->second;
}

engine::Plan plan_alike(domain::Farm const& farm) { return engine::make_plan(farm, sample::without_spread(farm)); }

std::vector<int> bags(engine::Plan const& plan) {
    std::vector<int> counts;
    for (auto const& hatch : plan.hatches) counts.push_back(hatch.feeds.at(0).bags);
    return counts;
}

}  // namespace

TEST_CASE("a hatch uses what the one before left in its last bag", "[bags]") {
    auto farm = two_hatches();
    CHECK(bags(sample::plan_of(farm)) == std::vector<int>{1, 1});  // 21 kg, then 42 kg
    farm.feeds.at("grower").on_hand = kilograms(2);
    auto plan = sample::plan_of(farm);
    CHECK(bags(plan) == std::vector<int>{1, 0});  // 19 kg, then 40 kg
    CHECK(plan.bags == 1);
    CHECK(plan.feeds.at(0).bags == 1);
    CHECK_THAT(in_kilograms(plan.feeds.at(0).need), Catch::WithinRel(42.0, 1e-9));
    CHECK(in_money(plan.cost) == 30);
    CHECK(in_money(*plan.hatches[1].feeds.at(0).cost) == 0);
    farm.feeds.at("grower").on_hand = kilograms(22);
    CHECK(bags(sample::plan_of(farm)) == std::vector<int>{0, 1});
    farm.feeds.at("grower").spare = kilograms(21);
    CHECK(bags(sample::plan_of(farm)) == std::vector<int>{1, 1});  // 20 kg, then 41 kg
}

TEST_CASE("feeds are counted apart", "[bags]") {
    auto const plan = sample::plan_of(sample::round_figures());  // 7 kg of starter, 14 kg of grower
    CHECK(plan.bags == 2);
    CHECK(in_money(plan.cost) == 50);
    CHECK(plan.cost_is_whole);
}

TEST_CASE("the cost is not whole while something to buy has no price or no size", "[bags]") {
    auto farm = sample::round_figures();
    auto& grower = farm.feeds.at("grower");
    grower.price.reset();
    auto plan = sample::plan_of(farm);
    CHECK_FALSE(plan.cost_is_whole);
    CHECK(in_money(plan.cost) == 20);
    CHECK(plan.bags == 2);
    grower.on_hand = kilograms(14.1);  // none to buy
    CHECK(sample::plan_of(farm).cost_is_whole);
    grower.on_hand = kilograms(0);
    grower.price = money(30);
    grower.bag.reset();
    plan = sample::plan_of(farm);
    CHECK_FALSE(plan.cost_is_whole);
    CHECK(plan.bags == 1);
    CHECK_FALSE(plan.hatches[0].feeds.at(1).cost);
}

TEST_CASE("packs by weight, for all hatches together", "[bags]") {
    auto farm = two_hatches();
    auto& tonic = give(farm, "1 g per L");  // 10 g a hatch
    tonic.pack = kilograms(0.008);
    auto plan = plan_alike(farm);
    REQUIRE(plan.supplements.size() == 1);
    CHECK_THAT(in_grams(*plan.supplements[0].by_weight), Catch::WithinRel(20.0, 1e-9));
    CHECK_FALSE(plan.supplements[0].by_volume);
    CHECK(plan.supplements[0].packs == 3);
    CHECK(in_money(*plan.supplements[0].cost) == 27);
    CHECK(in_money(plan.cost) == 60 + 27);
    CHECK(plan.cost_is_whole);
    tonic.price.reset();
    CHECK_FALSE(plan_alike(farm).cost_is_whole);
    farm.hatches[1].supplement.reset();
    CHECK(plan_alike(farm).supplements.at(0).packs == 2);
}

// Past the last knot nobody dies, and what a flock drinks is the product of two independent lognormals, of which low
// and high are the 5 % and 95 % points: 1.644853627 standard deviations to either side (any table of the normal law).
TEST_CASE("packs are for batches that do for a flock that drinks as 1 in 20 does", "[bags]") {
    auto farm = two_hatches();
    auto& tonic = give(farm, "1 g per L");
    tonic.pack = kilograms(0.001);
    auto const kind = readers::RationsReader().load(farm).kinds.at("bobwhite");
    auto const eats = kind.growing.curve.rows().back();
    auto const& drinks = kind.water.ratio;
    double const sd = std::hypot(std::log(eats.high / eats.low), std::log(drinks[2] / drinks[0])) / (2 * 1.644853627);
    double const grams = 2 * 5 * std::ceil(2 * std::exp(1.644853627 * sd));  // whole litres: 3 for 2.57
    auto const plan = sample::plan_of(farm);
    auto const& bought = plan.supplements.at(0);
    CHECK_THAT(in_grams(*bought.by_weight), Catch::WithinRel(grams, 1e-9));
    CHECK_FALSE(bought.by_volume);
    CHECK(bought.packs == 30);
    CHECK(in_money(*bought.cost) == 9 * 30);
    CHECK(in_money(plan.cost) == 30 * plan.bags + 9 * 30);
    CHECK(in_money(plan.safe_cost) == 30 * plan.safe_bags + 9 * 30);
    CHECK(bought.first_needed == farm.hatches[0].date + days(200));
}

TEST_CASE("packs by volume, and of a powder by the spoon", "[bags]") {
    auto farm = two_hatches();
    auto& tonic = give(farm, "5 mL per L");  // 50 mL a hatch
    tonic.pack_volume = litres(0.03);
    auto bought = plan_alike(farm).supplements.at(0);
    CHECK_THAT(in_millilitres(*bought.by_volume), Catch::WithinRel(100.0, 1e-9));
    CHECK_FALSE(bought.by_weight);
    CHECK(bought.packs == 4);
    tonic.pack_volume.reset();
    tonic.pack = kilograms(0.03);
    CHECK_FALSE(plan_alike(farm).supplements.at(0).packs);  // its weight is not known
    CHECK_FALSE(plan_alike(farm).cost_is_whole);
    tonic.spoon = kilograms_per_litre(0.8);  // 80 g
    CHECK(plan_alike(farm).supplements.at(0).packs == 3);
}

TEST_CASE("packs of what goes into the stock", "[bags]") {
    auto farm = two_hatches();
    auto& tonic = give(farm, "1 g per L");
    tonic.stock = domain::Stock{parse_rate("256 g per L"), {128}};  // 2 g per L of water: 40 g
    tonic.pack = kilograms(0.015);
    auto const bought = plan_alike(farm).supplements.at(0);
    CHECK_THAT(in_grams(*bought.by_weight), Catch::WithinRel(40.0, 1e-9));
    CHECK(bought.packs == 3);
}

// Each hatch eats 21 kg: 21 and then 42 kg of grower, at 0.42 a kg.
TEST_CASE("feed sold loose costs what is missing, to the gram", "[bags]") {
    auto farm = two_hatches();
    auto& grower = farm.feeds.at("grower");
    grower.bag.reset();
    grower.price.reset();
    grower.by_weight = money_per_kilogram(0.42);
    auto plan = plan_alike(farm);
    REQUIRE(plan.feeds.size() == 1);
    double const behind = in_kilograms(plan.feeds[0].stays_behind);
    CHECK(behind == 0);
    CHECK_THAT(in_money(plan.feeds[0].cost.value()), Catch::WithinRel(42 * 0.42, 1e-6));
    CHECK_THAT(in_money(plan.feeds[0].safe_cost.value()), Catch::WithinRel(42 * 0.42, 1e-6));
    CHECK_THAT(in_money(plan.hatches[0].feeds[0].cost.value()), Catch::WithinRel(21 * 0.42, 1e-6));
    CHECK_THAT(in_money(plan.hatches[1].feeds[0].cost.value()), Catch::WithinRel(21 * 0.42, 1e-6));
    CHECK(plan.cost_is_whole);
    CHECK(plan.bags == 0);
    grower.on_hand = kilograms(30);  // 12 kg are missing, all of it of the second
    plan = plan_alike(farm);
    CHECK(in_money(plan.hatches[0].feeds[0].cost.value()) == 0);
    CHECK_THAT(in_money(plan.hatches[1].feeds[0].cost.value()), Catch::WithinRel(12 * 0.42, 1e-6));
    CHECK_THAT(in_money(plan.feeds[0].cost.value()), Catch::WithinRel(12 * 0.42, 1e-6));
    grower.on_hand = kilograms(50);
    CHECK(in_money(plan_alike(farm).feeds[0].safe_cost.value()) == 0);
}

TEST_CASE("lots are whole", "[bags]") {
    auto farm = two_hatches();
    auto& grower = farm.feeds.at("grower");
    grower.in_lots = true;
    grower.bag = kilograms(41);  // of 42 kg
    grower.price = money(10);
    auto const plan = plan_alike(farm);
    CHECK(plan.feeds.at(0).bags == 2);
    CHECK(in_money(plan.feeds.at(0).cost.value()) == 20);
}
