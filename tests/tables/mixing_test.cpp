// Published dilution figures, with the tolerance of their last printed digit.
#include <catch2/catch.hpp>

#include "cropful/engine/mix.hpp"
#include "cropful/readers/rations.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

/// L of product for this water at this rate.
double product(std::string const& rate, double litres_of_water) {
    domain::Supplement supplement;
    supplement.rate = parse_rate(rate);
    return in_litres(*engine::dose(supplement, litres(litres_of_water)).by_volume);
}

constexpr double gallon = 3.785411784;  // L, NIST HB 44 App. C
constexpr double ounce = gallon / 128;  // US fl oz
constexpr double bleach = 52500;        // mg of chlorine per L at 5.25 % w/v

}  // namespace

TEST_CASE("KDHE: 1 fl oz of 5.25 % bleach per gallon is 410 mg/L", "[tables]") {
    CHECK_THAT(product("1 fl oz per gal", gallon) * bleach / gallon, Catch::WithinAbs(410, 0.5));
}

TEST_CASE("KDHE: 50 mg/L in 1,000 gal takes 122 fl oz", "[tables]") {
    CHECK_THAT(product("122 fl oz per 1000 gal", 1000 * gallon) * bleach / (1000 * gallon), Catch::WithinAbs(50, 0.5));
}

TEST_CASE("KDHE: 410 mg/L in 10,000 gal takes 10,000 fl oz, 78 gal", "[tables]") {
    double const used = product("1 fl oz per gal", 10000 * gallon);
    CHECK_THAT(used / ounce, Catch::WithinRel(10000.0, 1e-12));
    CHECK_THAT(used / gallon, Catch::WithinAbs(78, 0.5));
}

TEST_CASE("CDC: parts of water to one of bleach", "[tables]") {
    // Best Practices, App. E: parts = (% have / % want) - 1; 3.5 % to 0.5 %: 6 parts. 5 % to 0.1 %: 49 parts.
    auto const [have, want, parts] = GENERATE(table<double, double, int>({{3.5, 0.5, 6}, {5, 0.1, 49}}));
    double const water = 10;
    double const used = product("1:" + std::to_string(parts), water);
    CHECK_THAT(have * used / (used + water), Catch::WithinRel(want, 1e-12));
}

TEST_CASE("CDC: 14.3 g of 35 % powder per litre is 0.5 %", "[tables]") {
    domain::Supplement supplement;
    supplement.rate = parse_rate("14.3 g per L");
    auto const dose = engine::dose(supplement, litres(1));
    CHECK_THAT(in_grams(*dose.by_weight) * 0.35 / 10, Catch::WithinAbs(0.5, 0.005));
}

TEST_CASE("poultry water: a gallon of 5.25 % bleach treats 17,500 gal at 3 mg/L", "[tables]") {
    // "Sanitizing Poultry Drinking Water", Farm Recovery chapter 6.
    CHECK_THAT(product("1 gal per 17500 gal", gallon) * bleach / gallon, Catch::WithinAbs(3.0, 0.05));
}

TEST_CASE("USDA: teaspoons of salt, sugar and baking soda", "[tables]") {
    // USDA National Nutrient Database, WEIGHT.txt, items 02047, 19335 and 18372: 6.0, 4.2 and 4.6 g. BUILT FROM. Baking
    // soda again by its sodium: 1,260 mg a teaspoon (item 18372) at 27.36 % of it (ABBREV.txt). Independent.
    // Band: 0.05 g.
    auto const powders = readers::RationsReader().powders();
    auto const grams = [&](std::string const& name) {
        for (rations::Powder const& powder : powders) {
            if (powder.name != name) continue;
            CHECK(powder.source.standing == domain::Standing::published);
            return in_grams(powder.teaspoonful());
        }
        return 0.0;
    };
    CHECK(powders.size() == 3);
    CHECK_THAT(grams("table salt"), Catch::WithinAbs(6.0, 0.05));
    CHECK_THAT(grams("sugar"), Catch::WithinAbs(4.2, 0.05));
    CHECK_THAT(grams("baking soda"), Catch::WithinAbs(4.6, 0.05));
    CHECK_THAT(grams("baking soda"), Catch::WithinAbs(1.260 / 0.2736, 0.05));
}
