// Worked examples of labels and of arithmetic by hand; spoons and gallons as NIST Handbook 44 Appendix C defines them.
#include "cropful/engine/mix.hpp"

#include <catch2/catch.hpp>

using namespace cropful;
using namespace cropful::quantities;

namespace {

domain::Supplement product(std::string const& rate) {
    domain::Supplement supplement;
    supplement.key = supplement.title = "product";
    supplement.rate = parse_rate(rate);
    return supplement;
}

Volume gallons(double x) { return litres(x * 3.785411784); }

}  // namespace

TEST_CASE("a bacitracin soluble pack: 4.096 oz in 128 gal is 400 mg of the drug per gallon", "[mix]") {
    // Label (DailyMed, rev. 2022-07-21): a pack holds 51.2 g activity at 200 g/lb; quail, 400 mg/gal.
    auto const dose = engine::dose(product("4.096 oz per 128 gal"), gallons(128));
    CHECK_THAT(in_grams(*dose.by_weight), Catch::WithinAbs(116.1, 0.05));
    double const activity_mg = in_grams(*dose.by_weight) / 453.59237 * 200 * 1000;
    CHECK_THAT(activity_mg / 128, Catch::WithinRel(400.0, 1e-9));
}

TEST_CASE("bacitracin zinc at 5 g/lb: 500 then 165 mg per gallon", "[mix]") {
    // 21 CFR 520.154c(d)(2), 2015 edition: 45.36 and 14.97 g of powder a gallon (computed from the rule).
    CHECK_THAT(in_grams(*engine::dose(product("45.36 g per gal"), gallons(1)).by_weight) / 453.59237 * 5000,
               Catch::WithinAbs(500, 0.05));
    CHECK_THAT(in_grams(*engine::dose(product("14.97 g per gal"), gallons(1)).by_weight) / 453.59237 * 5000,
               Catch::WithinAbs(165, 0.05));
}

TEST_CASE("amprolium solution: 4, 8 and 16 fl oz per 50 gal are 1:1600, 1:800, 1:400", "[mix]") {
    // 21 CFR 520.100 strengths and levels, 2015 edition. Chickens and turkeys only; arithmetic, not advice for quail.
    auto const [ounces, parts, spoons] =
        GENERATE(table<std::string, double, double>({{"4", 1600, 0.48}, {"8", 800, 0.96}, {"16", 400, 1.92}}));
    auto const dose = engine::dose(product(ounces + " fl oz per 50 gal"), gallons(1));
    CHECK_THAT(in_litres(*dose.by_volume), Catch::WithinRel(in_litres(gallons(1)) / parts, 1e-12));
    CHECK_THAT(in_millilitres(*dose.by_volume) / 4.92892159375, Catch::WithinRel(spoons, 1e-12));
    CHECK_FALSE(dose.by_weight);
}

TEST_CASE("half a pound in a gallon of stock at 1 fl oz a gallon is not 1 oz per 15 gal", "[mix]") {
    // An extension table prints the two as equivalent; they are 1/16 and 1/15 oz per gal, 6.7 % apart.
    auto supplement = product("1 oz per 15 gal");
    supplement.stock = domain::Stock{parse_density("0.5 lb/gal"), 128};
    auto const dose = engine::dose(supplement, gallons(1));
    CHECK_THAT(in_grams(*dose.stock_product) / 28.349523125, Catch::WithinRel(1.0 / 16, 1e-12));
    CHECK_THAT(in_grams(*dose.by_weight) / 28.349523125, Catch::WithinRel(1.0 / 15, 1e-12));
    CHECK_THAT(in_millilitres(*dose.stock), Catch::WithinRel(29.5735295625, 1e-12));
    auto const cautions = engine::mix_cautions(supplement, {});
    REQUIRE(cautions.size() == 2);  // the bare oz, and the stock that does not match
    CHECK_THAT(cautions[1].text, Catch::Contains("apart"));
}

TEST_CASE("salt by the teaspoon: sodium in the water", "[mix]") {
    // 1 tsp salt weighs 6.0 g (USDA, from memory), sodium is 39.34 % of it: 2.36 g in a US gallon = 623.6 mg/L.
    auto supplement = product("1 tsp per gal");
    supplement.spoon = parse_density("6 g per tsp");
    supplement.sodium = 0.3934;
    CHECK_THAT(in_milligrams_per_litre(*engine::sodium(supplement)),
               Catch::WithinRel(6 * 0.3934 / 3.785411784 * 1000, 1e-12));
    auto const dose = engine::dose(supplement, gallons(2));
    CHECK_THAT(in_grams(*dose.by_weight), Catch::WithinRel(12.0, 1e-12));
}
