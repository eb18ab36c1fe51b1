// What is dissolved in water, as laboratories write it.
#include <catch2/catch.hpp>

#include "cropful/fault.hpp"
#include "cropful/quantities/text.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::Matchers::WithinRel;

namespace {

double milligrams(MassPerVolume content) { return in_milligrams_per_litre(content); }

double microsiemens(std::string_view text) {
    return std::get<Conductivity>(parse_solids(text)).in_microsiemens_per_centimetre();
}

}  // namespace

TEST_CASE("what is dissolved", "[quantities]") {
    CHECK_THAT(milligrams(parse_dissolved("120 mg/L")), WithinRel(120, 1e-12));
    CHECK_THAT(milligrams(parse_dissolved("120 mg/l")), WithinRel(120, 1e-12));
    CHECK_THAT(milligrams(parse_dissolved("120 ppm")), WithinRel(120, 1e-12));
    CHECK_THAT(milligrams(parse_dissolved("0.012 g per L")), WithinRel(12, 1e-12));
    CHECK(milligrams(parse_dissolved("0 mg/L")) == 0);
    CHECK_THAT(milligrams(parse_dissolved("100 g/L")), WithinRel(1e5, 1e-12));
    CHECK_THROWS_AS(parse_dissolved("100.1 g/L"), BadInput);
    CHECK_THROWS_AS(parse_dissolved("120"), BadInput);
    CHECK_THROWS_AS(parse_dissolved("120 mg"), BadInput);
    CHECK_THROWS_AS(parse_dissolved("-1 mg/L"), BadInput);
    CHECK_THROWS_AS(parse_dissolved("120 ppm/L"), BadInput);
    CHECK_THROWS_AS(parse_dissolved("120 mg/kg"), BadInput);
    CHECK_THROWS_AS(parse_dissolved("1500 uS/cm"), BadInput);
}

TEST_CASE("hardness in grains of a gallon", "[quantities]") {
    // 64.79891 mg of a grain, 3.785411784 L of a US gallon, both exact (NIST Handbook 44, Appendix C)
    CHECK_THAT(milligrams(parse_hardness("1 grain/gal")), WithinRel(64.79891 / 3.785411784, 1e-12));
    CHECK_THAT(milligrams(parse_hardness("15 grains per gallon")), WithinRel(15 * 64.79891 / 3.785411784, 1e-12));
    CHECK_THAT(milligrams(parse_hardness("15 grain/imp gal", Measures::uk)), WithinRel(15 * 64.79891 / 4.54609, 1e-12));
    CHECK_THAT(milligrams(parse_hardness("250 mg/L")), WithinRel(250, 1e-12));
    CHECK_THROWS_AS(parse_hardness("15 grain/gal", Measures::uk), BadInput);
    CHECK_THROWS_AS(parse_dissolved("15 grain/gal"), BadInput);
    CHECK_THROWS_AS(parse_solids("15 grain/gal"), BadInput);
}

TEST_CASE("conductivity in place of what is dissolved", "[quantities]") {
    CHECK_THAT(microsiemens("1500 uS/cm"), WithinRel(1500, 1e-12));
    CHECK_THAT(microsiemens("1500 µS/cm"), WithinRel(1500, 1e-12));
    CHECK_THAT(microsiemens("1.5 mS/cm"), WithinRel(1500, 1e-12));
    CHECK_THAT(microsiemens("1.5 dS/m"), WithinRel(1500, 1e-12));
    CHECK_THAT(microsiemens("150 mS/m"), WithinRel(1500, 1e-12));
    CHECK_THAT(milligrams(std::get<MassPerVolume>(parse_solids("960 mg/L"))), WithinRel(960, 1e-12));
    CHECK_THROWS_AS(parse_solids("100001 uS/cm"), BadInput);
    CHECK_THROWS_AS(parse_solids("1500 uS"), BadInput);
    CHECK_THROWS_AS(parse_solids("1500 US/cm"), BadInput);
}
