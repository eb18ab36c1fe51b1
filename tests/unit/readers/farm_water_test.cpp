// [water] of a farm file.
#include <catch2/catch.hpp>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::Matchers::WithinRel;

namespace {

domain::WaterReport report(std::string const& keys) {
    return *sample::farm_from(sample::bobwhites() + "\n[water]\n" + keys).water;
}

double milligrams(domain::WaterReport const& water, std::string const& item) {
    return in_milligrams_per_litre(water.found.at(item));
}

}  // namespace

TEST_CASE("what a laboratory found is read as it is written", "[readers]") {
    CHECK_FALSE(sample::farm_from(sample::bobwhites()).water);
    auto const water = report(
        "sampled = 2026-09-14\ntds = \"1500 uS/cm\"\nsodium = \"120 ppm\"\nnitrate_n = \"2.6 mg/L\"\n"
        "hardness = \"15 grain/gal\"\nph = 7\ncoliforms = 0\nsoftened = true\n");
    CHECK(water.conductivity->in_microsiemens_per_centimetre() == 1500);
    CHECK_FALSE(water.found.contains("tds"));
    CHECK_THAT(milligrams(water, "sodium"), WithinRel(120, 1e-12));
    CHECK_THAT(milligrams(water, "hardness"), WithinRel(15 * 64.79891 / 3.785411784, 1e-12));
    CHECK_THAT(in_milligrams_per_litre(*water.nitrate_n), WithinRel(2.6, 1e-12));
    CHECK(water.ph == 7);
    CHECK(water.coliforms == 0);
    CHECK(water.sampled->iso_date() == "2026-09-14");
    CHECK(water.softened);
    CHECK_FALSE(water.sampled_after);
}

TEST_CASE("what a report does not state is not filled in", "[readers]") {
    auto const water = report("iron = \"0.3 mg/L\"\n");
    CHECK(water.found.size() == 1);
    CHECK_FALSE(water.ph);
    CHECK_FALSE(water.coliforms);
    CHECK_FALSE(water.sampled);
    CHECK_FALSE(water.nitrate_n);
}

TEST_CASE("the water of the newcomer's file stays sound with its notes turned into keys", "[readers]") {
    auto const measures = GENERATE(Measures::us, Measures::metric, Measures::uk);
    std::string text = readers::starter_farm(measures);
    auto const start = text.find("\n# [water]\n"), end = text.find("\n\n", start);
    REQUIRE(end != std::string::npos);
    std::string water = text.substr(start, end - start);
    for (auto at = water.find("\n# "); at != std::string::npos; at = water.find("\n# ", at)) water.erase(at + 1, 2);
    text.replace(start, end - start, water);
    auto const report = sample::farm_from(text).water.value();
    CHECK(report.found.size() == 9);
    CHECK(report.sampled_after);
    CHECK(report.coliforms == 0);
    CHECK_THAT(milligrams(report, "hardness"), WithinRel(208.0, 0.02));  // round figures, near to each other
}
