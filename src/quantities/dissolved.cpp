#include <array>

#include "cropful/fault.hpp"
#include "cropful/quantities/text.hpp"
#include "quantities/number.hpp"
#include "quantities/units.hpp"

namespace cropful::quantities {

namespace {

constexpr double most_dissolved = 0.1;  // kg/L; the sea has 0.035
constexpr double most_conducted = 1e5;  // uS/cm; the sea has 50,000

/// A unit of conductivity, as laboratories write it.
struct Conducting {
    std::string_view unit;
    std::string_view per;
    double microsiemens_per_centimetre;
};
constexpr std::array conducting{Conducting{"uS", "cm", 1}, Conducting{"µS", "cm", 1}, Conducting{"mS", "cm", 1000},
                                Conducting{"mS", "m", 10}, Conducting{"dS", "m", 1000}};

Unit const& known_unit(std::string const& word, std::string_view dimension, Wanted const& wanted) {
    Unit const* unit = find_unit(word);
    if (unit == nullptr) wanted.refuse("unknown unit \"" + word + '"');
    if (unit->dimension != dimension) {
        wanted.refuse(std::string(unit->symbol) + " is no unit of " + (dimension == "mass" ? "weight" : "volume"));
    }
    return *unit;
}

/// kg/L
double weight_in_water(Figure const& figure, Measures measures, bool grains, Wanted const& wanted) {
    if (figure.per_unit.empty() && figure.unit == "ppm") return figure.amount * 1e-6;
    Unit const& of = known_unit(figure.unit, "mass", wanted);
    if (of.symbol == "grain" && !grains) wanted.refuse("only hardness is measured in grains");
    if (figure.per_unit.empty()) wanted.refuse("in how much water is missing");
    Unit const& in = known_unit(figure.per_unit, "volume", wanted);
    if (measures == Measures::uk && differs_by_country(in)) {
        std::string const symbol(in.symbol);
        wanted.refuse("a bare " + symbol + " is ambiguous here; say US " + symbol + " or imp " + symbol);
    }
    return figure.amount * of.factor / (figure.per_amount * in.factor);
}

MassPerVolume dissolved(std::string_view text, Measures measures, bool grains, std::string const& expected) {
    double const weight = weight_in_water(parse_figure(text, expected), measures, grains, {text, expected});
    if (weight > most_dissolved) throw BadInput('"' + std::string(text) + '"', "at most 100,000 mg/L");
    return kilograms_per_litre(weight);
}

}  // namespace

MassPerVolume parse_dissolved(std::string_view text, Measures measures) {
    return dissolved(text, measures, false, "an amount in water with its units, such as \"120 mg/L\" or \"120 ppm\"");
}

MassPerVolume parse_hardness(std::string_view text, Measures measures) {
    return dissolved(text, measures, true, "a hardness with its units, such as \"250 mg/L\" or \"15 grain/gal\"");
}

std::variant<MassPerVolume, Conductivity> parse_solids(std::string_view text, Measures measures) {
    std::string const expected = "dissolved solids with their units, such as \"960 mg/L\" or \"1500 uS/cm\"";
    Figure const figure = parse_figure(text, expected);
    for (Conducting const& one : conducting) {
        if (figure.unit != one.unit || figure.per_unit != one.per) continue;
        double const conducted = figure.amount / figure.per_amount * one.microsiemens_per_centimetre;
        if (conducted > most_conducted) throw BadInput('"' + std::string(text) + '"', "at most 100,000 uS/cm");
        return Conductivity::microsiemens_per_centimetre(conducted);
    }
    return dissolved(text, measures, false, expected);
}

}  // namespace cropful::quantities
