// The water of a farm: what is drunk, how it is graded, sodium as one sum. Worked by hand.
#include <catch2/catch.hpp>

#include "cautions.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using engine::WaterGrade;
using sample::due;

namespace {

MassPerVolume milligrams(double x) { return kilograms_per_litre(x * 1e-6); }

domain::Farm with_water(std::map<std::string, double> const& found,
                        domain::Farm farm = sample::farm_from(sample::bobwhites())) {
    farm.water.emplace();
    for (auto const& [item, content] : found) farm.water->found[item] = milligrams(content);
    return farm;
}

/// Young Japanese quail on a product of 100 % sodium, mg in a litre.
domain::Farm coturnix_on(double well, double product) {
    auto farm = with_water({{"sodium", well}}, sample::with_supplement("tonic", "1 g per L"));
    farm.hatches[0].kind = "coturnix";
    farm.supplements.at("tonic").sodium = product / 1000;
    return farm;
}

engine::WaterFinding finding(engine::Plan const& plan, std::string const& item) {
    for (auto const& one : plan.water) {
        if (one.figure.item == item) return one;
    }
    FAIL("nothing found of " << item);
    return {};
}

}  // namespace

TEST_CASE("the worst first, and what is not stated is not there", "[water]") {
    auto farm = with_water({{"tds", 900}, {"sodium", 51}, {"chloride", 20}});
    farm.water->ph = 5.9;
    auto const plan = sample::plan_of(farm);
    REQUIRE(plan.water.size() == 4);
    CHECK(plan.water[0].figure.item == "ph");
    CHECK(plan.water[0].grade == WaterGrade::caution);
    CHECK(plan.water[1].figure.item == "sodium");
    CHECK(plan.water[2].figure.item == "chloride");
    CHECK(plan.water[3].grade == WaterGrade::fits);
    CHECK_FALSE(plan.water[3].row);
}

TEST_CASE("a level for chicks is of the hatch that has them", "[water]") {
    // 2233 mg/L for quail chicks to 42 d; 1000 for poultry
    auto farm = with_water({{"tds", 2300}});
    CHECK(finding(sample::plan_of(farm), "tds").row->level == 2233);
    auto const date = farm.hatches[0].date;
    auto const grown = sample::plan_of(farm, {.from = date + days(42), .until = {}});
    CHECK(finding(grown, "tds").row->level == 1000);
    CHECK(finding(grown, "tds").grade == WaterGrade::aim);
    auto const both = finding(sample::plan_of(farm, {.from = date + days(41.9), .until = {}}), "tds");
    CHECK(both.grade == WaterGrade::guide);
    CHECK_THAT(in_days(both.age), WithinAbs(41.9, 1e-9));
}

TEST_CASE("a softener trades hardness for sodium, but not behind it", "[water]") {
    // 120 + 0.4594 x 280 = 248.6
    auto farm = with_water({{"sodium", 120}, {"hardness", 280}});
    CHECK_THAT(finding(sample::plan_of(farm), "sodium").figure.value, WithinRel(120.0, 1e-12));
    CHECK_THAT(finding(sample::plan_of(farm), "hardness").figure.value, WithinRel(280.0, 1e-12));
    farm.water->softened = true;
    CHECK_THAT(finding(sample::plan_of(farm), "sodium").figure.value, WithinAbs(248.632, 1e-9));
    CHECK(finding(sample::plan_of(farm), "hardness").figure.value == 0);
    farm.water->sampled_after = true;
    CHECK_THAT(finding(sample::plan_of(farm), "sodium").figure.value, WithinRel(120.0, 1e-12));
    farm.water->sampled_after = false;
    farm.water->found.erase("hardness");
    auto const sum = sample::plan_of(farm).sodium.front();
    CHECK_FALSE(sum.softener);
    CHECK_THAT(in_milligrams_per_litre(sum.sum), WithinRel(120.0, 1e-12));
}

TEST_CASE("conductivity and nitrogen are turned into what they stand for", "[water]") {
    auto farm = with_water({});
    farm.water->conductivity = Conductivity::microsiemens_per_centimetre(1500);
    farm.water->nitrate_n = milligrams(10);
    auto const plan = sample::plan_of(farm);
    CHECK_THAT(finding(plan, "tds").figure.value, WithinRel(960.0, 1e-12));
    CHECK_THAT(finding(plan, "nitrate").figure.value, WithinRel(44.268, 1e-12));
    CHECK(due(farm, "water-people"));  // above 44 mg/L
    farm.water->nitrate_n = milligrams(9.9);
    CHECK_FALSE(due(farm, "water-people"));
}

TEST_CASE("sodium of a course is one sum", "[water]") {
    // 492 mg/L did no harm to young Japanese quail, of 983 they died
    auto const sum = sample::plan_of(coturnix_on(100, 300)).sodium.front();
    CHECK(sum.supplement == "tonic");
    CHECK_THAT(in_milligrams_per_litre(*sum.well), WithinRel(100.0, 1e-12));
    CHECK_THAT(in_milligrams_per_litre(*sum.product), WithinRel(300.0, 1e-12));
    CHECK_THAT(in_milligrams_per_litre(sum.sum), WithinRel(400.0, 1e-12));
    CHECK(sum.grade == WaterGrade::guide);
    CHECK(sample::plan_of(coturnix_on(200, 293)).sodium.front().grade == WaterGrade::caution);
    CHECK_FALSE(due(coturnix_on(600, 382.9), "sodium-lethal"));
    CHECK(due(coturnix_on(600, 383.1), "sodium-lethal"));
    CHECK(due(coturnix_on(40, 11), "sodium-water"));
    CHECK_FALSE(due(coturnix_on(40, 9), "sodium-water"));
    auto const mixed = sample::plan_of(coturnix_on(100, 300));
    CHECK_THAT(in_milligrams_per_litre(mixed.hatches[0].mix()->sum->sum), WithinRel(400.0, 1e-12));
}

TEST_CASE("a product that states no sodium is unknown, never 0", "[water]") {
    auto farm = coturnix_on(100, 300);
    farm.supplements.at("tonic").sodium.reset();
    auto const plan = sample::plan_of(farm);
    CHECK(plan.sodium.size() == 2);
    for (auto const& sum : plan.sodium) CHECK(sum.product.has_value() == sum.supplement.empty());
    CHECK(std::ranges::any_of(plan.assumptions, [](auto const& one) { return one.id == "sodium-unstated"; }));
    farm.water.reset();
    CHECK(sample::plan_of(farm).sodium.empty());
}

TEST_CASE("water that is not fit, and water that may harm", "[cautions]") {
    CHECK(due(with_water({{"tds", 5000}}), "water-stop"));
    CHECK_FALSE(due(with_water({{"tds", 4999}}), "water-stop"));
    CHECK(due(with_water({{"tds", 4999}}), "water-caution"));
    CHECK_FALSE(due(with_water({{"tds", 3000}}), "water-caution"));
    auto const two = sample::plan_of(with_water({{"tds", 5000}, {"sodium", 2000}}));
    CHECK(sample::times_said(two, "water-stop") == 1);  // one line for both
}

TEST_CASE("a sample of more than a year ago", "[cautions]") {
    auto farm = with_water({{"tds", 500}});
    CHECK_FALSE(due(farm, "water-old"));
    domain::Moment const now(farm.hatches[0].date.date());
    engine::Window const window{.from = {}, .until = {}, .hatches = {}, .now = now};
    auto const said = [&](char const* sampled) {
        farm.water->sampled = domain::parse_moment(sampled);
        return sample::times_said(sample::plan_of(farm, window), "water-old");
    };
    REQUIRE(now.iso_date() == "2027-04-05");
    CHECK(said("2026-04-05") == 0);
    CHECK(said("2026-04-04") == 1);
    CHECK(said("2027-04-01") == 0);
}

TEST_CASE("sodium of the diet is that of feed and water", "[water]") {
    // 0.18 % + 2 g of water for each g of feed x 663.5 mg/L = 0.3127 %, above 0.3 %
    auto const farm = [](double well) {
        auto one = with_water({{"sodium", well}}, sample::farm_in("rations/farms/saltgrass.toml"));
        one.warmth.reset();
        one.feeds.at("starter").label["sodium"] = {0.18, {}};
        return one;
    };
    auto const diet = [&](double well) {
        for (auto const& part : sample::plan_of(farm(well)).hatches) {
            for (auto const& check : part.checks) {
                if (check.diet && part.hatch.name == "May bobwhites") return check;
            }
        }
        return engine::Check{};
    };
    auto const check = diet(663.5);
    REQUIRE(check.diet);
    double const ratio = in_litres_per_kilogram(*check.thirst);
    double const drunk = in_milligrams_per_litre(*check.drunk_sodium);
    CHECK_THAT(*check.diet, WithinRel(0.18 + drunk * ratio / 10'000, 1e-12));
    CHECK_THAT(check.ceiling.value().at_most, WithinRel(0.3, 1e-12));
    CHECK(due(farm(900), "diet-sodium"));
    CHECK_FALSE(due(farm(40), "diet-sodium"));
}

TEST_CASE("bleach for drinking water", "[water]") {
    // Kansas KDHE: 50 mg/L in 1,000 gal take 122 fl oz of 5.25 % bleach; 1 gal of it treats 17,500 gal at 3 mg/L
    double const gallon = litres_per_gallon;
    engine::ChlorineDose const strong{milligrams(50), 0.0525, litres(1000 * gallon)};
    CHECK_THAT(in_litres(strong.product()) / (gallon / 128), WithinAbs(122, 0.5));
    engine::ChlorineDose const drunk{milligrams(3), 0.0525, litres(17'500 * gallon)};
    CHECK_THAT(in_gallons(drunk.product()), WithinAbs(1, 0.005));
    // 1 part of stock in 128: 3 x 128 mg in each of 10 L, at 50 g/L: 76.8 mL; added to 128 it is 129 times as strong
    engine::ChlorineDose line{milligrams(3), 0.05, litres(10)};
    line.proportioner = Proportioner{128, false};
    CHECK_THAT(in_millilitres(line.product()), WithinRel(76.8, 1e-9));
    line.proportioner = Proportioner{128, true};
    CHECK_THAT(in_millilitres(line.product()), WithinRel(77.4, 1e-9));
    rations::WaterTable table;
    table.chlorine = {milligrams(2), milligrams(5), {}};
    auto const said = [&](double wanted, std::string const& id) {
        auto const cautions = engine::chlorine_cautions({milligrams(wanted), 0.05, litres(1)}, table);
        return std::ranges::any_of(cautions, [&](auto const& one) { return one.id == id; });
    };
    CHECK(said(3, "chlorine-gas"));
    CHECK(said(3, "chlorine-drugs"));
    CHECK(said(3, "chlorine-label"));
    CHECK_FALSE(said(5, "chlorine-strong"));
    CHECK(said(5.1, "chlorine-strong"));
}
