#include "cropful/domain/nutrient.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <string>

#include "faults.hpp"

using namespace cropful;
using namespace cropful::domain;
using Catch::Contains;
using Catch::WithinRel;

namespace {

double level(char const* key, std::string_view text) {
    Nutrient const* nutrient = find_nutrient(key);
    REQUIRE(nutrient != nullptr);
    return parse_level(*nutrient, text);
}

std::string level_fault(char const* key, std::string_view text) {
    return sample::fault_of([&] { level(key, text); });
}

}  // namespace

TEST_CASE("nutrients have keys and titles of their own", "[domain]") {
    std::set<std::string_view> keys;
    std::set<std::string_view> titles;
    for (Nutrient const& nutrient : nutrients()) {
        CAPTURE(nutrient.key);
        CHECK(keys.insert(nutrient.key).second);
        CHECK(titles.insert(nutrient.title).second);
        CHECK(find_nutrient(nutrient.key) == &nutrient);
    }
    CHECK(nutrients().size() == 47);
    CHECK(find_nutrient("sunshine") == nullptr);
    CHECK(find_nutrient("") == nullptr);
    CHECK(find_nutrient("met_cys")->title == "methionine + cystine");
}

TEST_CASE("what stands on labels only", "[domain]") {
    std::set<std::string_view> only;
    for (Nutrient const& nutrient : nutrients()) {
        if (nutrient.label_only) only.insert(nutrient.key);
    }
    CHECK(only == std::set<std::string_view>{"fat", "fibre", "phosphorus", "salt", "ash", "moisture"});
}

TEST_CASE("levels in their own unit are taken as they stand", "[domain]") {
    CHECK(level("protein", "24 %") == 24);
    CHECK(level("methionine", "0.57%") == 0.57);
    CHECK(level("zinc", "60 mg/kg") == 60);
    CHECK(level("vit_a", "1650 IU/kg") == 1650);
    CHECK(level("vit_d3", "750 ICU/kg") == 750);
    CHECK(level("vit_d3", "750 IU per kg") == 750);
    CHECK(level("energy", "2900 kcal/kg") == 2900);
}

// 1 % = 10 000 mg/kg = 10 g/kg; 1 kg = 1/0.45359237 lb (NIST HB 44 App. C); 1 kcal = 4184 J (SP 811).
TEST_CASE("levels in a label's other units are converted", "[domain]") {
    CHECK_THAT(level("calcium", "10 g/kg"), WithinRel(1.0, 1e-15));
    CHECK_THAT(level("sodium", "1500 mg/kg"), WithinRel(0.15, 1e-15));
    CHECK_THAT(level("zinc", "0.006 %"), WithinRel(60.0, 1e-15));
    CHECK_THAT(level("zinc", "60 ppm"), WithinRel(60.0, 1e-15));
    CHECK_THAT(level("choline", "1.3 g/kg"), WithinRel(1300.0, 1e-15));
    CHECK_THAT(level("vit_b12", "10 mcg/kg"), WithinRel(0.01, 1e-15));
    CHECK_THAT(level("vit_b12", "10 µg/kg"), WithinRel(0.01, 1e-15));
    CHECK_THAT(level("vit_a", "5000 IU/lb"), WithinRel(11023.113109243879, 1e-15));
    CHECK_THAT(level("zinc", "45.359237 mg/lb"), WithinRel(100.0, 1e-15));
    CHECK_THAT(level("energy", "12 MJ/kg"), WithinRel(2868.0688336520076, 1e-15));
}

TEST_CASE("a level of another kind is refused", "[domain]") {
    CHECK(level_fault("calcium", "1.2") ==
          "found \"1.2\"; expected a level of calcium with its unit, such as \"1.25 %\"");
    CHECK_THAT(level_fault("zinc", "60 IU/kg"), Contains("such as \"300 mg/kg\""));
    CHECK_THAT(level_fault("vit_a", "1650 mg/kg"), Contains("such as \"1650 IU/kg\""));
    CHECK_THAT(level_fault("vit_d3", "5 %"), Contains("such as \"1650 IU/kg\""));
    CHECK_THAT(level_fault("energy", "24 %"), Contains("\"2900 kcal/kg\""));
    CHECK_THAT(level_fault("calcium", "1.2 g"), Contains("a level of calcium"));
    CHECK_THAT(level_fault("calcium", "1.2 g/L"), Contains("a level of calcium"));
    CHECK_THAT(level_fault("calcium", "nan %"), Contains("a level of calcium"));
    CHECK_THAT(level_fault("calcium", "-1 %"), Contains("less than 0"));
    CHECK_THAT(level_fault("calcium", "101 %"), Contains("more than the whole feed"));
    CHECK_THAT(level_fault("zinc", "1000001 mg/kg"), Contains("more than the whole feed"));
    CHECK_THAT(level_fault("calcium", "0 g per 0." + std::string(320, '0') + "1 kg"),
               Contains("too large or too small"));
    CHECK_THAT(level_fault("calcium", "1 g per " + std::string(300, '9') + " kg"), Contains("too large or too small"));
    CHECK(level_fault("calcium", "100 %") == "no fault");
}

TEST_CASE("levels are printed in their own unit", "[domain]") {
    CHECK(print_level(*find_nutrient("protein"), 24) == "24 %");
    CHECK(print_level(*find_nutrient("calcium"), 0.75) == "0.75 %");
    CHECK(print_level(*find_nutrient("zinc"), 60) == "60 mg/kg");
    CHECK(print_level(*find_nutrient("vit_a"), 1650) == "1650 IU/kg");
    CHECK(print_level(*find_nutrient("vit_d3"), 750) == "750 IU/kg");  // one spelling
    CHECK(print_level(*find_nutrient("energy"), 2900) == "2900 kcal/kg");
}
