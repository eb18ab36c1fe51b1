// What growers commonly do, beside what the model says. Common practice, no source: these bands are wide on purpose and
// only catch an answer that no grower would believe. docs/model.md shows the figures.
#include <catch2/catch.hpp>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

TEST_CASE("100 to 125 chicks at a partly filled five-gallon hopper are fed for four to five days", "[practice]") {
    double const chicks = GENERATE(100.0, 125.0);
    double const age = GENERATE(1.0, 7.0, 14.0);
    auto farm = sample::farm_from(sample::bobwhites());
    farm.hoppers.at("tube").volume = litres(5 * 3.785411784);
    auto& hatch = farm.hatches.front();
    hatch.chicks = birds(chicks);
    hatch.first_age = days(age);
    hatch.hoppers = 1;
    auto const plan = sample::plan_of(farm, {{}, hatch.date + days(age + 4.5)});
    auto const& fill = plan.hatches.at(0).hoppers->fills.at(0);
    double const share = ratio(fill.used / fill.content);
    INFO(chicks << " chicks at day " << age << ": 4.5 days take " << 100 * share << " % of the hopper");
    CHECK(share > 0.05);
    CHECK(share < 0.5);
}

TEST_CASE("a gallon drinker for 40 young chicks is changed every few days, not refilled in hours", "[practice]") {
    auto const plan = sample::plan_of(sample::bobwhites());
    auto const& first = plan.hatches.at(0).drinkers->fills.at(0);
    CHECK(in_days(*first.empty_after) > 3);
    CHECK(in_days(*first.empty_after) < 30);
}

TEST_CASE("an 8 oz pack at a teaspoon of 5 g a gallon does 3,000 chicks for a first day or two, hundreds for a course",
          "[practice]") {
    // The rule "one bag does for some 3,000 chicks" fits a course of one to three days at this strength.
    domain::Farm farm = sample::farm_from(sample::bobwhites());
    domain::Supplement tonic;
    tonic.key = "tonic";
    tonic.rate = parse_rate("1 tsp per gal");
    tonic.spoon = parse_density("5 g per tsp");
    int const course = GENERATE(1, 2, 3, 5);
    tonic.days_long = course;
    farm.supplements.emplace("tonic", tonic);
    farm.hatches.front().supplement = "tonic";
    farm.hatches.front().chicks = birds(3000);
    auto const plan = sample::plan_of(farm);
    double const packs = in_grams(*plan.hatches.at(0).mix->total.by_weight) / 226.796;
    INFO(course << " days for 3,000 chicks take " << packs << " packs of 8 oz");
    CHECK(packs > 0.02);
    CHECK(packs < 5);
}
