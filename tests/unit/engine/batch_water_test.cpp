// Volumes a person can measure, for doses a person can measure: 1/8 tsp, 0.5 mL, 50 steps of a scale. By hand; a US
// gallon is 3.785411784 L and 768 tsp (NIST Handbook 44, Appendix C).
#include <catch2/catch.hpp>

#include "cropful/engine/mix.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::WithinRel;

namespace {

constexpr double gallon = 3.785411784;

domain::Supplement rated(std::string const& rate) {
    domain::Supplement supplement;
    supplement.key = supplement.title = "product";
    supplement.rate = parse_rate(rate);
    return supplement;
}

domain::Farm measuring(Measures measures) {
    domain::Farm farm;
    farm.measures = measures;
    return farm;
}

/// The batch for so many gallons of water, in gallons.
double gallons_for(domain::Supplement const& supplement, double need, double scale = 0.001) {
    domain::Farm farm = measuring(Measures::us);
    farm.scale_step = kilograms(scale);
    return in_litres(engine::batch_water(supplement, litres(need * gallon), farm)) / gallon;
}

double litres_for(domain::Supplement const& supplement, double need, Measures measures = Measures::metric) {
    return in_litres(engine::batch_water(supplement, litres(need), measuring(measures)));
}

}  // namespace

TEST_CASE("1 tsp per gal: a pint carries 1/8 tsp, a quart 1/4, half a gallon 1/2", "[batch]") {
    auto const [need, batch] = GENERATE(table<double, double>({{0.01, 0.125},
                                                               {0.125, 0.125},
                                                               {0.126, 0.25},
                                                               {0.25, 0.25},
                                                               {0.3, 0.5},
                                                               {0.5, 0.5},
                                                               {0.6, 1},
                                                               {1, 1},
                                                               {1.01, 2},
                                                               {11.5, 12}}));
    CHECK_THAT(gallons_for(rated("1 tsp per gal"), need), WithinRel(batch, 1e-9));
    auto const tonic = rated("1 tsp per gal");
    CHECK_THAT(in_millilitres(*engine::dose(tonic, litres(gallon / 8)).by_volume), WithinRel(4.92892159375 / 8, 1e-12));
}

TEST_CASE("a pint at 1/2 tsp per gal would take 1/16 tsp: nobody has that spoon", "[batch]") {
    CHECK_THAT(gallons_for(rated("1/2 tsp per gal"), 0.1), WithinRel(0.25, 1e-9));
    CHECK_THAT(gallons_for(rated("1/8 tsp per gal"), 0.1), WithinRel(1.0, 1e-9));
}

TEST_CASE("3 mL per L by the spoon: two gallons take 4 5/8 tsp to 0.4 %, one would be 2.3 % off", "[batch]") {
    // 18.432 eighths of a teaspoon a gallon: 1 pt 2.3, 1 qt 4.6, 1/2 gal 9.2, 1 gal 18.4 (2.3 % off 18);
    // 2 gal 36.86 (0.37 % off 37), 3 gal 55.30 (0.53 % off 55), 4 gal 73.73 (0.37 % off 74).
    auto const [need, batch] = GENERATE(table<double, double>({{0.1, 2}, {0.9, 2}, {2, 2}, {2.1, 3}, {3.5, 4}}));
    CHECK_THAT(gallons_for(rated("3 mL per L"), need), WithinRel(batch, 1e-9));
}

TEST_CASE("1.3 tsp per gal: a dose within 1 % of the rate, on either side", "[batch]") {
    // 10.4 eighths a gallon: 1 pt 1.3, 1 qt 2.6, 1/2 gal 5.2, 1 gal 10.4 (3.8 % off), 2 gal 20.8 (0.96 % off 21).
    CHECK_THAT(gallons_for(rated("1.3 tsp per gal"), 0.1), WithinRel(2.0, 1e-9));
    // 8.24 eighths a gallon: 2 gal 16.48 (2.9 % off), 3 gal 24.72 (1.1 % off 25), 4 gal 32.96 (0.12 % off 33).
    CHECK_THAT(gallons_for(rated("1.03 tsp per gal"), 1.5), WithinRel(4.0, 1e-9));
}

TEST_CASE("weighed: 50 g on a scale that shows grams, 5 g on one that shows tenths", "[batch]") {
    auto const powder = rated("10 g per gal");
    CHECK_THAT(gallons_for(powder, 0.1), WithinRel(5.0, 1e-9));
    CHECK_THAT(gallons_for(powder, 5.0), WithinRel(5.0, 1e-9));
    CHECK_THAT(gallons_for(powder, 5.1), WithinRel(6.0, 1e-9));
    CHECK_THAT(gallons_for(powder, 0.1, 0.0001), WithinRel(0.5, 1e-9));
    CHECK_THAT(gallons_for(powder, 0.1, 0.00001), WithinRel(0.125, 1e-9));  // 1.25 g
    CHECK_THAT(litres_for(rated("1 g per L"), 6), WithinRel(50.0, 1e-9));
    CHECK_THAT(litres_for(rated("25 g per L"), 0.2), WithinRel(2.0, 1e-9));
}

TEST_CASE("a powder whose spoon weighs something may be given by either", "[batch]") {
    auto powder = rated("5 g per gal");
    CHECK_THAT(gallons_for(powder, 0.1), WithinRel(10.0, 1e-9));
    powder.spoon = parse_density("5 g per tsp");
    CHECK_THAT(gallons_for(powder, 0.1), WithinRel(0.125, 1e-9));
    powder.spoon = parse_density("4.7 g per tsp");  // 8.51 eighths a gallon, 17.02 in two
    CHECK_THAT(gallons_for(powder, 0.1), WithinRel(2.0, 1e-9));
}

TEST_CASE("metric: half a litre, one, two, then whole litres, in steps of 0.5 mL", "[batch]") {
    auto const liquid = rated("5 mL per L");
    auto const [need, batch] =
        GENERATE(table<double, double>({{0.1, 0.5}, {0.5, 0.5}, {0.51, 1}, {1.2, 2}, {2.1, 3}, {7.5, 8}}));
    CHECK_THAT(litres_for(liquid, need), WithinRel(batch, 1e-9));
    CHECK_THAT(litres_for(rated("1.25 mL per L"), 0.3), WithinRel(2.0, 1e-9));  // 0.625, 1.25 no; 2.5 mL
    CHECK_THAT(litres_for(rated("0.1 mL per L"), 0.3), WithinRel(5.0, 1e-9));
    CHECK_THAT(litres_for(liquid, 0.3, Measures::uk), WithinRel(0.5, 1e-9));
}

TEST_CASE("water through a proportioner is whatever runs through", "[batch]") {
    auto tonic = rated("1 tsp per gal");
    tonic.stock = domain::Stock{parse_rate("4 oz per gal"), {128}};
    CHECK_THAT(gallons_for(tonic, 1.234), WithinRel(1.234, 1e-12));
}
