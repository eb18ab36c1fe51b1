#include "quantities/units.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <vector>

using namespace cropful::quantities;

namespace {

std::string symbol_of(std::string_view word) {
    Unit const* unit = find_unit(word);
    return unit == nullptr ? "" : std::string(unit->symbol);
}

std::vector<std::string> spellings(Unit const& unit) {
    std::vector<std::string> words{std::string(unit.symbol)};
    std::string word;
    for (char const c : std::string(unit.also) + ',') {
        if (c != ',') {
            word += c;
        } else if (!word.empty()) {
            words.push_back(word);
            word.clear();
        }
    }
    return words;
}

}  // namespace

// Decimals worked out by hand from the exact definitions: 1 lb = 0.45359237 kg, 1 gal = 231 in3, 1 in = 0.0254 m
// (NIST HB 44, 2023, App. C); 1 imp gal = 4.54609 L (Weights and Measures Act 1985); 1 kcal = 4184 J (SP 811).
TEST_CASE("each unit has its authority's value", "[quantities]") {
    auto const [symbol, factor] = GENERATE(table<std::string, double>({
        {"kg", 1},
        {"g", 0.001},
        {"mg", 0.000001},
        {"tonne", 1000},
        {"lb", 0.45359237},
        {"oz", 0.028349523125},
        {"grain", 64.79891e-6},
        {"short ton", 907.18474},
        {"cwt", 45.359237},
        {"US cwt", 45.359237},
        {"imp cwt", 50.80234544},  // 112 x 0.45359237
        {"L", 1},
        {"mL", 0.001},
        {"m3", 1000},
        {"in3", 0.016387064},
        {"ft3", 28.316846592},
        {"gal", 3.785411784},
        {"US gal", 3.785411784},
        {"qt", 0.946352946},
        {"US qt", 0.946352946},
        {"pt", 0.473176473},
        {"US pt", 0.473176473},
        {"cup", 0.2365882365},
        {"fl oz", 0.0295735295625},
        {"US fl oz", 0.0295735295625},
        {"tbsp", 0.01478676478125},
        {"tsp", 0.00492892159375},
        {"imp gal", 4.54609},
        {"imp qt", 1.1365225},
        {"imp pt", 0.56826125},
        {"imp fl oz", 0.0284130625},
        {"d", 1},
        {"wk", 7},
        {"h", 0.041666666666666667},
        {"min", 0.00069444444444444444},
        {"m", 1},
        {"cm", 0.01},
        {"mm", 0.001},
        {"in", 0.0254},
        {"ft", 0.3048},
        {"kcal", 1},
        {"MJ", 239.00573613766730},
        {"degC", 1},
        {"degF", 0.55555555555555556},
        {"%", 0.01},
    }));
    CAPTURE(symbol);
    REQUIRE(symbol_of(symbol) == symbol);
    CHECK_THAT(find_unit(symbol)->factor, Catch::WithinRel(factor, 1e-15));
}

TEST_CASE("the table above leaves no unit out", "[quantities]") { CHECK(units().size() == 45); }

TEST_CASE("no spelling means two units, and every spelling is found", "[quantities]") {
    std::set<std::string> seen;
    for (Unit const& unit : units()) {
        for (std::string const& word : spellings(unit)) {
            CAPTURE(word);
            CHECK(seen.insert(word).second);
            CHECK(symbol_of(word) == unit.symbol);
        }
    }
}

TEST_CASE("every unit states its definition and authority", "[quantities]") {
    for (Unit const& unit : units()) {
        CAPTURE(unit.symbol);
        CHECK(unit.factor > 0);
        CHECK_FALSE(unit.dimension.empty());
        CHECK_FALSE(unit.exact.empty());
        CHECK_FALSE(unit.source.empty());
    }
}

TEST_CASE("common spellings are understood", "[quantities]") {
    auto const [word, symbol] = GENERATE(table<std::string, std::string>({
        {"pounds", "lb"},
        {"lbs.", "lb"},
        {"Pound", "lb"},
        {"ounces", "oz"},
        {"fl-oz", "fl oz"},
        {"fl. oz.", "fl oz"},
        {"FL OZ", "fl oz"},
        {"fl  oz", "fl oz"},
        {"fluid ounce", "fl oz"},
        {"imp-gal", "imp gal"},
        {"Imperial gallons", "imp gal"},
        {"us gal", "US gal"},
        {"liters", "L"},
        {"litre", "L"},
        {"ml", "mL"},
        {"tablespoons", "tbsp"},
        {"Tsp", "tsp"},
        {"cubic feet", "ft3"},
        {"ft³", "ft3"},
        {"weeks", "wk"},
        {"hours", "h"},
        {"short-tons", "short ton"},
        {"°F", "degF"},
        {"percent", "%"},
    }));
    CAPTURE(word);
    CHECK(symbol_of(word) == symbol);
}

TEST_CASE("a letter's case is not guessed where it matters", "[quantities]") {
    auto const word = GENERATE(as<std::string>(), "Mg", "MG", "mJ", "mj", "M", "G", "D", "H", "ML", "T", "t", "ton",
                               "tons", "long ton", "stone", "", " ", "fl", "gallon of water", "kgs/");
    CAPTURE(word);
    CHECK(symbol_of(word).empty());
}

TEST_CASE("five bare measures and no others differ by country", "[quantities]") {
    std::set<std::string> differing;
    for (Unit const& unit : units()) {
        if (differs_by_country(unit)) differing.insert(std::string(unit.symbol));
    }
    CHECK(differing == std::set<std::string>{"cwt", "gal", "qt", "pt", "fl oz"});
}

TEST_CASE("a bare ton is known for what it is", "[quantities]") {
    CHECK(is_bare_ton("ton"));
    CHECK(is_bare_ton("Tons"));
    CHECK_FALSE(is_bare_ton("short ton"));
    CHECK_FALSE(is_bare_ton("tonne"));
}
