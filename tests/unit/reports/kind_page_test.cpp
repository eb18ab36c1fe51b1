// A kind's page in metric units: 1 ft2 = 0.09290304 m2, 1 in = 2.54 cm, 1 gal = 3.785411784 L (NIST HB 44 App. C).
#include <catch2/catch.hpp>

#include "cropful/readers/rations.hpp"
#include "cropful/reports/setting.hpp"
#include "cropful/reports/table_page.hpp"

using namespace cropful;
using Catch::Matchers::Contains;

namespace {

std::string room_of(std::string const& kind, quantities::Measures measures) {
    readers::RationsReader const reader;
    auto const one = reader.kind(kind);
    std::string const text = reports::set(reports::kind_page(one, reader.needs(one.needs_table), measures));
    auto const from = text.find("ROOM");
    return text.substr(from, text.find("NEEDS") - from);
}

}  // namespace

TEST_CASE("room for few birds is not rounded to a whole bird", "[reports]") {
    auto const metric = room_of("pheasant", quantities::Measures::metric);
    CHECK_THAT(metric, Contains("0.54"));  // 0.05 birds/ft2 = 0.5382 birds/m2
    CHECK_THAT(metric, Contains("43"));    // 4 birds/ft2 = 43.06
    CHECK_THAT(metric, Contains("5.1"));   // 2 in = 5.08 cm
    CHECK_THAT(room_of("pheasant", quantities::Measures::us), Contains("0.05"));
}

TEST_CASE("a metric page knows no gallons, feet or birds per square foot alone", "[reports]") {
    for (char const* kind : {"bobwhite", "coturnix", "coturnix-jumbo", "chukar", "pheasant"}) {
        auto const metric = room_of(kind, quantities::Measures::metric);
        INFO(metric);
        CHECK(metric.find(" gal") == std::string::npos);
        CHECK(metric.find(" ft ") == std::string::npos);
        CHECK_THAT(metric, Contains("3.8 L"));
        bool const feet = metric.find("birds/ft2") != std::string::npos;
        CHECK((!feet || metric.find("birds/m2") != std::string::npos));
    }
}
