#include "reports/caution_words.hpp"

#include <stdexcept>

#include <catch2/catch.hpp>

#include "reports/argument_words.hpp"

using namespace cropful;
using namespace cropful::quantities;
using domain::Caution;
using reports::worded;

namespace {

domain::Moment const april = domain::parse_moment("2027-04-05");

std::string in_us(std::string_view text, domain::Argument argument) {
    return worded(text, {{"x", std::move(argument)}}, Measures::us);
}
std::string in_metric(std::string_view text, domain::Argument argument) {
    return worded(text, {{"x", std::move(argument)}}, Measures::metric);
}

Caution old_water(std::string const& hatch, double stands) {
    return {.id = "old-water-while-away",
            .hatches = {hatch},
            .with = {{"form", "stated"}, {"stands", days(stands)}, {"every", days(2)}},
            .source = "a test"};
}

}  // namespace

TEST_CASE("arguments are printed in the farm's measures", "[reports][words]") {
    CHECK(in_us("{x}", Temperature::celsius(32)) == "90 F");
    CHECK(in_metric("{x}", Temperature::celsius(32)) == "32 C");
    CHECK(in_us("{x}", kilograms_per_litre(0.6087)) == "38 lb/ft3");  // 38 x 0.45359237 / 28.316846592
    CHECK(in_metric("{x}", kilograms_per_litre(0.6087)) == "0.61 kg/L");
    CHECK(in_us("{x:g/L} {x:mg/L}", kilograms_per_litre(0.0012345)) == "1.234 1,234");
    // 1.8 % for each degree C is 1 % for each degree F
    CHECK(in_us("{x} per {x:degree}", per_kelvin(0.018)) == "1 % per degree F");
    CHECK(in_metric("{x} per {x:degree}", per_kelvin(0.018)) == "1.8 % per degree C");
    // 28.349523125 g to an ounce, 29.5735295625 mL to a fluid ounce
    CHECK(in_us("{x}", litres_per_kilogram(2 * 29.5735295625 / 28.349523125)) == "2 fl oz per oz");
    CHECK(in_metric("{x}", litres_per_kilogram(2)) == "2 mL per g");
    CHECK(in_us("{x}", grams_per_bird_day(28.349523125)) == "1 oz");
    CHECK(in_metric("{x}", grams_per_bird_day(25)) == "25 g");
    CHECK(in_us("{x}", kilograms(0.45359237)) == "1 lb");
    CHECK(in_metric("{x:g}", kilograms(0.073)) == "73");
}

TEST_CASE("what stands behind a field's colon", "[reports][words]") {
    CHECK(in_us("{x} {x:0} {x:2}", 1234.5678) == "1235 1,235 1,234.57");
    CHECK(in_us("{x:point}", 1.0) == "1 point");
    CHECK(in_us("{x:point}", 2.0) == "2 points");
    CHECK(in_us("{x} {x:1}", domain::Share{0.0769}) == "7.69 % 7.7 %");
    CHECK(in_us("{x}, {x:year}", april) == "Mon 5 Apr, Mon 5 Apr 2027");
    CHECK(in_us("{x}", days(42)) == "6 wk");
    CHECK(in_us("{x}", domain::Age{days(12)}) == "day 12");
    CHECK(in_us("{x}; {x:amount}", domain::Content{"protein", 24}) == "24 % protein; 24 %");
    CHECK(in_us("{x}", std::vector<std::string>{"oats", "peas"}) == "oats, peas");
    CHECK(in_metric("{x:in each}", std::vector<domain::Portion>{{"April", kilograms(7)}, {"May", kilograms(8)}}) ==
          "April about 7 kg in each; May about 8 kg in each");
    CHECK(in_us("{x}", std::vector<domain::Known>{{"oats", {"energy", "fat"}}, {"peas", {}}}) ==
          "oats (less sure: energy, fat), peas");
    CHECK_THROWS(in_us("{x:year}", days(1)));
    CHECK_THROWS(in_us("{y}", days(1)));
}

TEST_CASE("a part that cannot be filled is left out, and a user's signs are no fields", "[reports][words]") {
    CHECK(in_us("a< and {x}>< and {y}>.", "b") == "a and b.");
    CHECK(in_us("{x}", "{y} <b>") == "{y} <b>");
}

TEST_CASE("an id without words is refused", "[reports][words]") {
    CHECK_THROWS_AS(reports::caution_words({.id = "no-such-thing"}, Measures::us), std::out_of_range);
    CHECK_THROWS_AS(reports::caution_words({.id = "salt-lethal", .with = {{"form", "other"}}}, Measures::us),
                    std::out_of_range);
}

TEST_CASE("what is true of several hatches is said once, of all of them", "[reports][words]") {
    auto const lines = reports::caution_lines(
        {old_water("April", 4), old_water("May", 5), old_water("June", 4), old_water("April", 4)}, Measures::us);
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].hatches == std::vector<std::string>{"April", "June"});
    CHECK(lines[0].text ==
          "April, June: the water will stand 4 d, you change it every 2 d. Scrub the drinkers before you go.");
    CHECK(lines[1].hatches == std::vector<std::string>{"May"});
}

TEST_CASE("what birds die of says so", "[reports][words]") {
    Caution const salt{.id = "salt-lethal",
                       .with = {{"form", "salt"},
                                {"feed", "grower"},
                                {"salt", domain::Content{"salt", 0.9}},
                                {"limit", "0.9 % (chicks): deaths"}}};
    CHECK(reports::caution_words(salt, Measures::us) ==
          "grower may hold 0.9 % salt. Do not give this. Check the spoon, the unit and the label. At 0.9 % (chicks): "
          "deaths.");
}
