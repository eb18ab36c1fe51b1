// Weights as the scale at hand shows them; 1 lb = 0.45359237 kg (NIST HB 44), 16 oz a lb.
#include "reports/mixing_sheet.hpp"

#include <catch2/catch.hpp>

using namespace cropful;
using namespace cropful::quantities;
using reports::on_scale;

namespace {

Mass pounds(double x) { return kilograms(x * 0.45359237); }
Mass ounces(double x) { return pounds(x / 16); }

}  // namespace

TEST_CASE("pounds and ounces on a scale of whole or parted ounces", "[reports]") {
    CHECK(on_scale(pounds(55) + ounces(3), ounces(1), Measures::us) == "55 lb 3 oz");
    CHECK(on_scale(ounces(2.5), ounces(0.5), Measures::us) == "2.5 oz");
    CHECK(on_scale(pounds(2), ounces(0.25), Measures::us) == "2 lb");
}

TEST_CASE("a scale of tenths of a pound is read in pounds", "[reports]") {
    CHECK(on_scale(pounds(5.3), pounds(0.1), Measures::us) == "5.3 lb");
}

TEST_CASE("a scale in the other system keeps its own units", "[reports]") {
    CHECK(on_scale(kilograms(0.804), kilograms(0.003), Measures::us) == "804 g");
    CHECK(on_scale(ounces(8.75), ounces(0.25), Measures::metric) == "8.75 oz");
    CHECK(on_scale(kilograms(25.05), kilograms(0.01), Measures::metric) == "25.05 kg");
}

TEST_CASE("what is no whole number of steps is shown as it was given", "[reports]") {
    CHECK(on_scale(ounces(0.4), ounces(1), Measures::us) == "0.4 oz");
}
