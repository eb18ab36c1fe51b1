// Worked examples of labels and of arithmetic by hand; spoons and gallons as NIST Handbook 44 Appendix C defines them.
#include "cropful/engine/mix.hpp"

#include <catch2/catch.hpp>

#include "cropful/engine/plan.hpp"
#include "sample_farms.hpp"

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

constexpr double ounce = 28.349523125;  // g
constexpr double pound = 453.59237;     // g

/// Product (g) for a course in the water of birds that drink 1 gal a day and are all alike, weighed to a tenth of a
/// gram: a batch is that gallon.
double course_grams(std::string const& rate, int days_long) {
    auto farm = sample::round_figures();
    auto& hatch = farm.hatches.front();
    hatch.chicks = birds(3785.411784 / (sample::grown_bobwhite * 2));
    hatch.supplement = "product";
    auto supplement = product(rate);
    supplement.from = hatch.first_age;
    supplement.days_long = days_long;
    farm.supplements.emplace("product", supplement);
    farm.scale_step = kilograms(0.0001);
    auto const plan = engine::make_plan(farm, sample::without_spread(farm));
    return in_grams(*plan.hatches.at(0).mix()->total.by_weight);
}

}  // namespace

TEST_CASE("a bacitracin soluble pack: 4.096 oz in 128 gal is 400 mg of the drug per gallon", "[mix]") {
    // Label (DailyMed, rev. 2022-07-21): a pack holds 51.2 g activity at 200 g/lb; quail, 400 mg/gal.
    auto const dose = engine::dose(product("4.096 oz per 128 gal"), gallons(128));
    CHECK_THAT(in_grams(*dose.by_weight), Catch::WithinAbs(116.1, 0.05));
    double const activity_mg = in_grams(*dose.by_weight) / 453.59237 * 200 * 1000;
    CHECK_THAT(activity_mg / 128, Catch::WithinRel(400.0, 1e-9));
}

TEST_CASE("the same pack by stock: 51.2 g activity in 1 gal, 1 fl oz of it to each gallon", "[mix]") {
    // Label as above; 1:128 is 1 fl oz in a gallon (128 fl oz). 400 mg/gal / 3.785411784 = 105.7 mg/L.
    auto supplement = product("4.096 oz per 128 gal");
    if (GENERATE(true, false)) supplement.rate.reset();  // a stock needs no label rate beside it
    supplement.stock = domain::Stock{parse_rate("4.096 oz per gal"), parse_proportioner("1:128")};
    auto const dose = engine::dose(supplement, gallons(1));
    CHECK_THAT(in_millilitres(*dose.stock), Catch::WithinRel(29.5735295625, 1e-12));
    CHECK_THAT(in_grams(*dose.by_weight) / pound * 200 * 1000, Catch::WithinRel(400.0, 1e-9));
    double const drug = in_milligrams_per_litre(*engine::strength(supplement)) * 200 / pound;
    CHECK_THAT(drug, Catch::WithinAbs(105.7, 0.05));
    // the pack's own gallon of stock treats 128 gal
    CHECK_THAT(in_grams(*engine::dose(supplement, gallons(128)).by_weight) / ounce, Catch::WithinRel(4.096, 1e-12));
    for (auto const& caution :
         engine::mix_cautions(supplement, days(1))) {  // the bare oz, not a stock that does not match
        CHECK(caution.id == "bare-ounces");
    }
}

TEST_CASE("the same pack at 100 and 200 mg per gallon treats 512 and 256 gal", "[mix]") {
    auto const [rate, level] =
        GENERATE(table<std::string, double>({{"4.096 oz per 512 gal", 100}, {"4.096 oz per 256 gal", 200}}));
    double const grams = in_grams(*engine::dose(product(rate), gallons(1)).by_weight);
    CHECK_THAT(grams / pound * 200 * 1000, Catch::WithinRel(level, 1e-9));
}

TEST_CASE("bacitracin zinc at 5 g/lb: 500 then 165 mg per gallon", "[mix]") {
    // 21 CFR 520.154c(d)(2), 2015 edition: 45.36 and 14.97 g of powder a gallon (computed from the rule).
    CHECK_THAT(in_grams(*engine::dose(product("45.36 g per gal"), gallons(1)).by_weight) / 453.59237 * 5000,
               Catch::WithinAbs(500, 0.05));
    CHECK_THAT(in_grams(*engine::dose(product("14.97 g per gal"), gallons(1)).by_weight) / 453.59237 * 5000,
               Catch::WithinAbs(165, 0.05));
}

TEST_CASE("bacitracin zinc: 5 days at 500, then 10 at 165 mg per gallon, at 1 gal a day, take 4,150 mg", "[mix]") {
    // 21 CFR 520.154c(d)(2), 2015 edition; 0.1 and 0.033 lb of the 5 g/lb powder. 5 x 500 + 10 x 165 = 4,150.
    double const first = course_grams("0.1 lb per gal", 5) / pound * 5000;
    double const then = course_grams("0.033 lb per gal", 10) / pound * 5000;
    CHECK_THAT(first, Catch::WithinRel(2500.0, 1e-9));
    CHECK_THAT(then, Catch::WithinRel(1650.0, 1e-9));
    CHECK_THAT(first + then, Catch::WithinRel(4150.0, 1e-9));
}

TEST_CASE("amprolium 20 % powder: 2, 4 and 8 oz per 50 gal give 0.006, 0.012 and 0.024 %", "[mix]") {
    // 21 CFR 520.100 strengths and levels, 2015 edition; 1.136, 2.271 and 4.542 g a gallon computed from the levels
    // (60 mg/L / 0.20 x 3.785411784 L). Chickens and turkeys only; arithmetic, not advice for quail.
    auto const [ounces, by_level, grams] = GENERATE(table<std::string, std::string, double>(
        {{"2", "300 mg per L", 1.136}, {"4", "600 mg per L", 2.271}, {"8", "1200 mg per L", 4.542}}));
    double const exact = in_grams(*engine::dose(product(by_level), gallons(1)).by_weight);
    CHECK_THAT(exact, Catch::WithinAbs(grams, 0.0005));
    auto const label = engine::dose(product(ounces + " oz per 50 gal"), gallons(1));
    CHECK_THAT(in_grams(*label.by_weight), Catch::WithinRel(grams, 0.002));  // the label rounds to whole ounces
    CHECK_THAT(in_grams(*engine::dose(product(ounces + " oz per 50 gal"), gallons(50)).by_weight) / ounce,
               Catch::WithinRel(std::stod(ounces), 1e-12));
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
    supplement.stock = domain::Stock{parse_rate("0.5 lb/gal"), {128}};
    auto const dose = engine::dose(supplement, gallons(1));
    CHECK_THAT(in_grams(*dose.by_weight) / ounce, Catch::WithinRel(1.0 / 16, 1e-12));  // what the birds drink
    CHECK_THAT(in_grams(*engine::label_strength(supplement) * gallons(1)) / ounce, Catch::WithinRel(1.0 / 15, 1e-12));
    CHECK_THAT(in_millilitres(*dose.stock), Catch::WithinRel(29.5735295625, 1e-12));
    auto const cautions = engine::mix_cautions(supplement, days(1));
    REQUIRE(cautions.size() == 2);  // the bare oz, and the stock that does not match
    CHECK(cautions[0].id == "bare-ounces");
    CHECK(cautions[1].id == "stock-off-label");
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
