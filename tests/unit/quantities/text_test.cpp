#include "cropful/quantities/text.hpp"

#include <catch2/catch.hpp>

#include "faults.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::Contains;
using Catch::WithinRel;
using sample::fault_of;

namespace {

constexpr double same_arithmetic = 1e-15;

std::string mass_refusal(std::string_view text) {
    return fault_of([&] { parse_mass(text); });
}
std::string volume_refusal(std::string_view text, Measures measures = Measures::us) {
    return fault_of([&] { parse_volume(text, measures); });
}
std::string rate_refusal(std::string_view text, Measures measures = Measures::us) {
    return fault_of([&] { parse_rate(text, measures); });
}

}  // namespace

// Expected values are worked out by hand from the exact definitions of NIST HB 44 (2023) App. C and SP 811 App. B:
// 1 lb = 0.45359237 kg, 1 gal = 3.785411784 L, 1 ft3 = 28.316846592 L, 1 kcal = 4184 J, 1 tsp = 1/768 gal.
TEST_CASE("one quantity of each sort", "[quantities]") {
    CHECK_THAT(in_kilograms(parse_mass("2.5 lb")), WithinRel(1.133980925, same_arithmetic));
    CHECK_THAT(in_kilograms(parse_mass("8 oz")), WithinRel(0.226796185, same_arithmetic));
    CHECK_THAT(in_kilograms(parse_mass("2 short tons")), WithinRel(1814.36948, same_arithmetic));
    CHECK_THAT(in_litres(parse_volume("1 1/2 gal")), WithinRel(5.678117676, same_arithmetic));
    CHECK_THAT(in_litres(parse_volume("½ tsp")), WithinRel(0.002464460796875, same_arithmetic));
    CHECK_THAT(in_litres(parse_volume("8 fl-oz")), WithinRel(0.2365882365, same_arithmetic));
    CHECK(in_days(parse_duration("6 wk")) == 42);
    CHECK_THAT(in_days(parse_duration("36 h")), WithinRel(1.5, same_arithmetic));
    CHECK_THAT(in_metres(parse_length("10 in")), WithinRel(0.254, same_arithmetic));
    CHECK(in_kilocalories_per_kilogram(parse_energy("2900 kcal/kg")) == 2900);
    // 12 MJ/kg = 12 000 / 4.184; 1300 kcal/lb = 1300 / 0.45359237
    CHECK_THAT(in_kilocalories_per_kilogram(parse_energy("12 MJ/kg")), WithinRel(2868.0688336520076, same_arithmetic));
    CHECK_THAT(in_kilocalories_per_kilogram(parse_energy("1300 kcal per lb")),
               WithinRel(2866.0094084034085, same_arithmetic));
    // 38 * 0.45359237 / 28.316846592
    CHECK_THAT(in_kilograms_per_litre(parse_density("38 lb/ft3")), WithinRel(0.60870160821048536, same_arithmetic));
    // 0.005 / 0.00492892159375
    CHECK_THAT(in_kilograms_per_litre(parse_density("5 g per tsp")), WithinRel(1.0144206810552898, same_arithmetic));
}

TEST_CASE("a percentage is the nearest double to its hundredth", "[quantities]") {
    for (int i = 0; i <= 100; ++i) {
        CAPTURE(i);
        CHECK(parse_percent(std::to_string(i) + " %") == i / 100.0);
    }
    CHECK(parse_percent("24%") == 0.24);
    CHECK(parse_percent("12.5 percent") == 0.125);
}

TEST_CASE("temperatures are points, and may be below 0", "[quantities]") {
    CHECK_THAT(parse_temperature("95 degF").in_celsius(), WithinRel(35.0, same_arithmetic));
    CHECK(parse_temperature("32 F").in_celsius() == 0);
    CHECK_THAT(parse_temperature("-40 degF").in_celsius(), WithinRel(-40.0, same_arithmetic));
    CHECK(parse_temperature("-40 degC").in_celsius() == -40);
    CHECK(parse_temperature("21.5 °C").in_celsius() == 21.5);
    CHECK_THAT(parse_temperature("140 degF").in_celsius(), WithinRel(60.0, same_arithmetic));
}

TEST_CASE("a label's rate, in its own words", "[quantities]") {
    // Hand-computed: 1 tsp/gal = 1/768; (16/128)/50 = 1/400; 4 oz per 128 gal = 0.11339809250 kg / 484.532708352 L;
    // 4 oz per gal = 0.1133980925 / 3.785411784; 1 tsp per imp gal = 0.00492892159375 / 4.54609.
    struct Case {
        std::string words;
        double per_litre;
        bool by_weight;
        bool bare_oz;
    };
    auto const c = GENERATE(values<Case>({
        {"1 tsp per gal", 1.0 / 768, false, false},
        {"1 tsp/gal", 1.0 / 768, false, false},
        {"1 teaspoon per gallon of drinking water", 1.0 / 768, false, false},
        {"½ tsp per ½ gal", 1.0 / 768, false, false},
        {"1/2 tsp per 1/2 gal", 1.0 / 768, false, false},
        {"1/2 tsp / 1/2 gal", 1.0 / 768, false, false},
        {"4 oz per 128 gal", 0.00023403599085331374, true, true},
        {"4 ounces per gal", 0.029956606829224158, true, true},
        {"4 fl oz per 128 gal", 1.0 / 4096, false, false},
        {"16 fl oz per 50 gal", 0.0025, false, false},
        {"0.5 g per L", 0.0005, true, false},
        {"5 mL/L", 0.005, false, false},
        {"1 tsp per imp gal", 0.0010842111779023292, false, false},
        {"1:128", 1.0 / 128, false, false},
        {"1 : 400", 1.0 / 400, false, false},
    }));
    CAPTURE(c.words);
    Rate const rate = parse_rate("  " + c.words + " ");
    CHECK(rate.by_weight().has_value() == c.by_weight);
    double const per_litre = c.by_weight ? in_kilograms_per_litre(*rate.by_weight()) : *rate.by_measure();
    CHECK_THAT(per_litre, WithinRel(c.per_litre, same_arithmetic));
    CHECK(rate.says_bare_oz == c.bare_oz);
    CHECK(rate.words == c.words);
}

TEST_CASE("a rate that cannot be a rate is refused", "[quantities]") {
    CHECK_THAT(rate_refusal("1 tsp"), Contains("per how much water is missing"));
    CHECK_THAT(rate_refusal("1 tsp per"), Contains("unknown unit") || Contains("missing"));
    CHECK_THAT(rate_refusal("1 tsp/"), Contains("no unit after \"per\""));
    CHECK_THAT(rate_refusal("1 tsp per 0 gal"), Contains("an amount per 0"));
    CHECK_THAT(rate_refusal("0 tsp per gal"), Contains("more than 0"));
    CHECK_THAT(rate_refusal("2 gal per gal"), Contains("at most"));
    CHECK_THAT(rate_refusal("1 packet per gal"), Contains("unknown unit \"packet\""));
    CHECK_THAT(rate_refusal("1 wk per gal"), Contains("wk is a time"));
    CHECK_THAT(rate_refusal("1 tsp per 128 oz"), Contains("oz is a weight; for a volume say fl oz"));
    CHECK_THAT(rate_refusal("1 lb per ton"), Contains("short ton or tonne"));
    CHECK_THAT(rate_refusal("1 tsp per gal", Measures::uk), Contains("say US gal or imp gal"));
    CHECK_THAT(rate_refusal("1 fl oz per imp gal", Measures::uk), Contains("say US fl oz or imp fl oz"));
    CHECK_THAT(rate_refusal("1:0.5"), Contains("at most"));
    CHECK_THAT(rate_refusal("tonic"), Contains("a label's rate with its units, such as \"1 tsp per gal\""));
}

TEST_CASE("a proportion is 1 to so many", "[quantities]") {
    CHECK(parse_proportion("1:128") == 128);
    CHECK(parse_proportion(" 1 : 12.5 ") == 12.5);
    auto const text =
        GENERATE(as<std::string>(), "128", "2:128", "1:0", "1:-5", "1:", ":128", "1:128 gal", "1:2:3", "1:200000", "");
    CAPTURE(text);
    CHECK_THAT(fault_of([&] { parse_proportion(text); }), Contains("a proportion, such as \"1:128\""));
}

TEST_CASE("a proportioner's stock is one part in all, unless it is added", "[quantities]") {
    // 1 fl oz of stock in 1 gal, of 128 fl oz (exact); added to it, in 129 fl oz
    for (char const* text : {"1:128", "1:128 in all", " 1 : 128 in all "}) {
        CHECK(parse_proportioner(text).share() == 1.0 / 128);
    }
    CHECK(parse_proportioner("1:128 added").share() == 1.0 / 129);
    CHECK(parse_proportioner("1:0.5 added").share() == 1 / 1.5);
    auto const text = GENERATE("1:0.5", "1:128 add", "added", "2:128", "1:0 added", "1:128 in", "");
    CHECK_THAT(fault_of([&] { parse_proportioner(text); }), Contains("\"1:128 in all\" or \"1:128 added\""));
}

TEST_CASE("a wrong dimension is refused with the cure", "[quantities]") {
    CHECK(volume_refusal("8 oz") ==
          "found \"8 oz\" (oz is a weight; for a volume say fl oz); expected a volume with its unit, such as "
          "\"3 gal\"");
    CHECK_THAT(mass_refusal("8 fl oz"), Contains("fl oz is a volume; for a weight say oz"));
    CHECK_THAT(mass_refusal("8 imp fl oz"), Contains("imp fl oz is a volume; for a weight say oz"));
    CHECK_THAT(mass_refusal("2 gal"), Contains("gal is a volume"));
    CHECK_THAT(volume_refusal("2 wk"), Contains("wk is a time"));
    CHECK_THAT(fault_of([] { parse_energy("12 kg/kg"); }), Contains("kg is a weight"));
    CHECK_THAT(fault_of([] { parse_temperature("12 kcal"); }), Contains("kcal is an energy"));
    CHECK_THAT(fault_of([] { parse_length("12 %"); }), Contains("% is a percentage"));
    CHECK_THAT(fault_of([] { parse_percent("12 degC"); }), Contains("degC is a temperature"));
    CHECK_THAT(mass_refusal("2 lb/gal"), Contains("nothing may stand after \"per\""));
    CHECK_THAT(fault_of([] { parse_temperature("70 degF per d"); }), Contains("nothing may stand after \"per\""));
    CHECK_THAT(fault_of([] { parse_density("2 lb"); }), Contains("\"per\" what is missing"));
}

TEST_CASE("a unit that is missing, unknown or ambiguous is refused", "[quantities]") {
    CHECK(fault_of([] { parse_percent("24"); }) ==
          "found \"24\"; expected a percentage with its unit, such as \"24 %\"");
    CHECK_THAT(mass_refusal("2 ton"), Contains("short ton or tonne"));
    CHECK_THAT(mass_refusal("2 Tons"), Contains("short ton or tonne"));
    CHECK_THAT(mass_refusal("2 bags"), Contains("unknown unit \"bags\""));
    CHECK_THAT(mass_refusal("2 lb lb"), Contains("unknown unit \"lb lb\""));
    CHECK_THAT(mass_refusal("2 500 lb"), Contains("one number"));
    for (std::string const unit : {"gal", "qt", "pt", "fl oz", "gallons", "pints"}) {
        CAPTURE(unit);
        CHECK_THAT(volume_refusal("2 " + unit, Measures::uk), Contains("say US "));
        CHECK(volume_refusal("2 " + unit, Measures::metric) == "no fault");
    }
    CHECK_THAT(in_litres(parse_volume("2 imp gal", Measures::uk)), WithinRel(9.09218, same_arithmetic));
    CHECK_THAT(in_litres(parse_volume("2 US gal", Measures::uk)), WithinRel(7.570823568, same_arithmetic));
}

TEST_CASE("limits are kept on both sides", "[quantities]") {
    CHECK(mass_refusal("0 lb") == "no fault");
    CHECK(mass_refusal("1000000 kg") == "no fault");
    CHECK(mass_refusal("1000001 kg") == "found \"1000001 kg\"; expected a weight from 0 to 1000000 kg");
    CHECK_THAT(mass_refusal("-1 lb"), Contains("less than 0"));
    CHECK(volume_refusal("1000000 L") == "no fault");
    CHECK_THAT(volume_refusal("1000001 L"), Contains("from 0 to 1000000 L"));
    CHECK(fault_of([] { parse_duration("3650 d"); }) == "no fault");
    CHECK_THAT(fault_of([] { parse_duration("3651 d"); }), Contains("from 0 to 3650 d"));
    CHECK(fault_of([] { parse_length("100 m"); }) == "no fault");
    CHECK_THAT(fault_of([] { parse_length("101 m"); }), Contains("from 0 to 100 m"));
    CHECK(fault_of([] { parse_percent("100 %"); }) == "no fault");
    CHECK_THAT(fault_of([] { parse_percent("100.5 %"); }), Contains("from 0 to 100 %"));
    CHECK_THAT(fault_of([] { parse_energy("499 kcal/kg"); }), Contains("from 500 to 10000 kcal/kg"));
    CHECK_THAT(fault_of([] { parse_energy("10001 kcal/kg"); }), Contains("from 500 to 10000 kcal/kg"));
    CHECK_THAT(fault_of([] { parse_density("26 kg/L"); }), Contains("from 0.0000001 to 25 kg/L"));
    CHECK_THAT(fault_of([] { parse_density("0 kg/L"); }), Contains("from 0.0000001 to 25 kg/L"));
    CHECK_THAT(fault_of([] { parse_temperature("61 degC"); }), Contains("from -40 to 60 degC"));
    CHECK_THAT(fault_of([] { parse_temperature("-41 degF"); }), Contains("from -40 to 60 degC"));
}

TEST_CASE("a figure keeps units that have no dimension here", "[quantities]") {
    Figure const figure = parse_figure("1650 IU/kg", "a level");
    CHECK(figure.amount == 1650);
    CHECK(figure.unit == "IU");
    CHECK(figure.per_amount == 1);
    CHECK(figure.per_unit == "kg");
    CHECK(parse_figure("4 oz per 128 gal", "").per_amount == 128);
    CHECK(parse_figure("24 %", "").per_unit.empty());
    CHECK_THAT(fault_of([] { parse_figure("much", "a level"); }), Contains("found \"much\"; expected a level"));
}

// By hand from the same definitions: 7 lb 8 oz = 7.5 lb; 1 tbsp 1 1/2 tsp = 4.5/768 gal; 1 cup 1/2 tsp = 48.5/768 gal.
TEST_CASE("two units in one amount, as they are printed", "[quantities]") {
    CHECK_THAT(in_kilograms(parse_mass("7 lb 8 oz")), WithinRel(7.5 * 0.45359237, same_arithmetic));
    CHECK_THAT(in_kilograms(parse_mass("7 lb 8.5 oz")), WithinRel(7.53125 * 0.45359237, same_arithmetic));
    CHECK_THAT(in_litres(parse_volume("1 tbsp 1 1/2 tsp")), WithinRel(4.5 / 768 * 3.785411784, same_arithmetic));
    CHECK_THAT(in_litres(parse_volume("1 cup 1/2 tsp")), WithinRel(48.5 / 768 * 3.785411784, same_arithmetic));
    CHECK_THAT(in_days(parse_duration("318 d 8 h")), WithinRel(318 + 8.0 / 24, same_arithmetic));
    CHECK_THAT(in_days(parse_duration("1 d 2 h 3 min")), WithinRel(1 + 123.0 / 1440, same_arithmetic));
    CHECK_THAT(in_metres(parse_length("5 ft 11 in")), WithinRel(71 * 0.0254, same_arithmetic));
    // 1.5 lb in 128 gal
    CHECK_THAT(in_kilograms_per_litre(*parse_rate("1 lb 8 oz per 128 gal").by_weight()),
               WithinRel(1.5 * 0.45359237 / (128 * 3.785411784), same_arithmetic));
    auto const refused = [](std::string_view text) { return fault_of([&] { parse_mass(text); }); };
    CHECK_THAT(refused("7 lb 16 oz"), Contains("less than 1 lb after it"));
    CHECK_THAT(refused("7.5 lb 8 oz"), Contains("a whole number before the first of two units"));
    CHECK_THAT(refused("8 oz 7 lb"), Contains("less than 1 oz after it"));
    CHECK_THAT(refused("7 lb 8"), Contains("found \"7 lb 8\""));
    CHECK_THAT(refused("7 lb 8 gal"), Contains("gal is a volume"));
    CHECK_THAT(refused("7 lb -8 oz"), Contains("found \"7 lb -8 oz\""));
    CHECK_THAT(fault_of([] { parse_percent("24 % 3 %"); }), Contains("found \"24 % 3 %\""));
    CHECK_THAT(fault_of([] { parse_small_mass("2 mL"); }), Contains("such as \"50 g\""));
}
