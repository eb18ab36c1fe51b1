// Small farms whose answers can be worked by hand. Constant-rate adults: bobwhites past the last knots, as many as eat
// 1.47 kg a day, so the sums below are plain arithmetic on that one figure.
#include <catch2/catch.hpp>
#include <cmath>

#include "cropful/fault.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

domain::Farm adults() {
    auto farm = sample::farm_from(sample::bobwhites());
    farm.warmth.reset();
    auto& hatch = farm.hatches.front();
    hatch.chicks = birds(1470 / sample::grown_bobwhite);
    hatch.first_age = days(200);
    hatch.until = days(300);
    hatch.feeding = {{"grower", days(0)}};
    hatch.removed.clear();
    hatch.hoppers = 1;
    hatch.drinkers = 1;
    return farm;
}

}  // namespace

TEST_CASE("a constant flock: feed, hopper and drinker by hand", "[engine]") {
    auto const plan = sample::plan_of(adults());
    auto const& hatch = plan.hatches.at(0);
    // 1.47 kg / (1 - 0.02) = 1.5 kg a day; 100 days.
    CHECK_THAT(in_kilograms(hatch.feeds.at(0).amount), Catch::WithinRel(150.0, 1e-12));
    // 3 gal x 38 lb/ft3 x 0.95, over 1.5 kg a day.
    double const content = 3 * 231.0 / 1728 * 38 * 0.45359237 * 0.95;
    CHECK_THAT(in_kilograms(hatch.hoppers()->fills.at(0).content), Catch::WithinRel(content, 1e-12));
    CHECK_THAT(in_days(*hatch.hoppers()->fills.at(0).empty_after), Catch::WithinRel(content / 1.5, 1e-12));
    // 1 gal less 8 fl oz = 120 fl oz; 1,470 mL x 2.0 / 0.97 a day.
    double const water = 120 * 29.5735295625;
    CHECK_THAT(in_millilitres(hatch.drinkers()->fills.at(0).content), Catch::WithinRel(water, 1e-12));
    CHECK_THAT(in_days(*hatch.drinkers()->fills.at(0).empty_after), Catch::WithinRel(water / (2940 / 0.97), 1e-12));
}

TEST_CASE("bags: need less stock, plus spare, in whole bags", "[engine]") {
    auto farm = adults();
    farm.hoppers.at("tube").stays_behind = 0;
    auto& grower = farm.feeds.at("grower");
    grower.bag = kilograms(25);
    grower.price = money(20);
    CHECK(sample::plan_of(farm).bags == 6);  // 150 kg is six bags to the gram
    grower.on_hand = kilograms(1);
    CHECK(sample::plan_of(farm).bags == 6);
    grower.on_hand = kilograms(25);
    CHECK(sample::plan_of(farm).bags == 5);
    grower.spare = kilograms(0.001);
    auto const plan = sample::plan_of(farm);
    CHECK(plan.bags == 6);
    CHECK(in_money(plan.cost) == 120);
    grower.on_hand = kilograms(1000);
    CHECK(sample::plan_of(farm).bags == 0);
}

TEST_CASE("richer feed and warm air change what is eaten and drunk", "[engine]") {
    auto farm = adults();
    auto const base = sample::plan_of(farm).hatches[0].feeds[0].amount;
    farm.feeds.at("grower").energy = kilocalories_per_kilogram(2850 * 2);
    CHECK_THAT(ratio(sample::plan_of(farm).hatches[0].feeds[0].amount / base),
               Catch::WithinRel(std::pow(0.5, 0.9), 1e-12));
    farm.feeds.at("grower").energy.reset();
    farm.warmth = Temperature::celsius(34);
    auto const warm = sample::plan_of(farm);
    CHECK_THAT(ratio(warm.hatches[0].feeds[0].amount / base), Catch::WithinRel(1 - 0.0184 * 10, 1e-12));
}

TEST_CASE("more birds removed than live is no answer", "[engine]") {
    auto farm = sample::farm_from(sample::bobwhites());
    farm.hatches[0].removed = {{days(56), birds(239)}};
    CHECK_THROWS_AS(sample::plan_of(farm), NoAnswer);
    CHECK_THROWS_WITH(sample::plan_of(farm), Catch::Contains("239 birds removed at 8 wk"));
}

TEST_CASE("laying without a published figure is no answer", "[engine]") {
    auto farm = sample::farm_from(sample::bobwhites());
    farm.hatches[0].kind = "chukar";
    farm.hatches[0].laying_from = days(100);
    CHECK_THROWS_WITH(sample::plan_of(farm), Catch::Contains("how much laying chukar eat is not known"));
}

TEST_CASE("a hopper too small to plan with is refused, not counted for ever", "[engine]") {
    auto farm = sample::farm_from(sample::bobwhites());
    farm.hoppers.at("tube").volume = litres(1e-5);
    CHECK_THROWS_WITH(sample::plan_of(farm), Catch::Contains("tube: holds so little"));
}

TEST_CASE("more removals than are worked out are refused", "[engine]") {
    auto farm = sample::farm_from(sample::bobwhites());
    farm.hatches[0].removed.assign(20001, {days(1), birds(1)});
    CHECK_THROWS_WITH(sample::plan_of(farm),
                      Catch::Contains("the hatches have 20,001 removals together; at most 20,000 removals are worked "
                                      "out at once: split the file"));
}

TEST_CASE("a drinker is refilled at the soonest of dry, change and the solution's life", "[engine]") {
    auto farm = adults();
    farm.hatches[0].chicks = birds(1);
    auto const plain = sample::plan_of(farm);
    CHECK_THAT(in_days(plain.hatches[0].drinkers()->fills[1].age), Catch::WithinRel(202.0, 1e-12));  // change_every
    domain::Supplement tonic;
    tonic.key = tonic.title = "tonic";
    tonic.rate = parse_rate("1 tsp per gal");
    tonic.from = days(203);
    tonic.days_long = 2;
    tonic.keeps = days(0.75);
    farm.supplements.emplace("tonic", tonic);
    farm.hatches[0].supplement = "tonic";
    auto const mixed = sample::plan_of(farm);
    std::vector<double> ages;
    for (auto const& fill : mixed.hatches[0].drinkers()->fills) ages.push_back(in_days(fill.age));
    ages.resize(8);
    // plain water makes way at 203; batches of 18 h at most, so from each chore to the next, to 205; plain water again
    // every 2 d
    double const dusk = 11 / 24.0;
    CHECK_THAT(ages, Catch::Approx(std::vector<double>{200, 202, 203, 203 + dusk, 204, 204 + dusk, 205, 207}));
}
