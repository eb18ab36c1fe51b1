#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "cropful/quantities/temperature.hpp"

/// Quantities as people write them.
///
///     quantity := number unit [ number unit ] [ ("per" | "/") [ number ] unit ]
///     number   := digits [ "." digits ] | digits "/" digits | digits " " digits "/" digits
///
/// "2.5 lb", "1 1/2 gal", "1/2 tsp", "24 %", "2900 kcal/kg", "38 lb/ft3", "95 degF", "4 oz per 128 gal".
/// Of two units, "7 lb 8 oz", the first stands with a whole number, and less than one of it is said in the second.
/// Every function throws BadInput (without a place) for a wrong dimension, a missing or ambiguous unit, a negative,
/// non-finite or absurdly large amount; the fault says what to write instead.
namespace cropful::quantities {

/// Which family of measures a farm thinks in; `uk` refuses a bare gallon, quart, pint or fluid ounce.
enum class Measures { us, metric, uk };
/// "us", "metric" or "uk"; throws BadInput.
Measures parse_measures(std::string_view text);

Mass parse_mass(std::string_view text, Measures measures = Measures::us);
/// A weight too; the fault's example is one of a drug.
Mass parse_small_mass(std::string_view text, Measures measures = Measures::us);
Duration parse_duration(std::string_view text, Measures measures = Measures::us);
Volume parse_volume(std::string_view text, Measures measures = Measures::us);
Length parse_length(std::string_view text, Measures measures = Measures::us);
Temperature parse_temperature(std::string_view text, Measures measures = Measures::us);  // -40..60 degC
EnergyPerMass parse_energy(std::string_view text, Measures measures = Measures::us);     // kcal/kg, MJ/kg
MassPerVolume parse_density(std::string_view text, Measures measures = Measures::us);
/// A price by weight: "14.50 per 50 lb", "310 per tonne", "0.35/lb", in the farm's currency.
MoneyPerMass parse_price(std::string_view text, Measures measures = Measures::us);
/// "24 %" as 0.24; 0 to 100 %.
double parse_percent(std::string_view text, Measures measures = Measures::us);
/// "1:128" as 128, more than 0.
double parse_proportion(std::string_view text);

/// How much of what is drunk is stock.
struct Proportioner {
    double parts = 1;    // N of 1:N
    bool added = false;  // one part of stock is ADDED to N of water; else it is one part in N in all
    [[nodiscard]] double share() const { return 1 / (parts + (added ? 1 : 0)); }
};
/// "1:128" and "1:128 in all" as one part in 128, "1:128 added" as one part to 128 of water.
Proportioner parse_proportioner(std::string_view text);

/// A label's rate: product to a volume of water, by weight or, as a ratio of two volumes, by measure.
struct Rate {
    std::variant<MassPerVolume, double> product = 0.0;
    bool says_bare_oz = false;  // the words say "oz", read as weight: on a liquid's label it means fl oz
    std::string words;          // as written

    [[nodiscard]] std::optional<MassPerVolume> by_weight() const;
    [[nodiscard]] std::optional<double> by_measure() const;
};
Rate parse_rate(std::string_view text, Measures measures = Measures::us);
/// Electrical conductivity of water.
class Conductivity {
  public:
    static constexpr Conductivity microsiemens_per_centimetre(double x) { return Conductivity(x); }
    [[nodiscard]] constexpr double in_microsiemens_per_centimetre() const { return value_; }
    friend constexpr std::partial_ordering operator<=>(Conductivity, Conductivity) = default;

  private:
    explicit constexpr Conductivity(double x) : value_(x) {}
    double value_;
};

/// What a litre of water holds of something, none included, at most 100 g: "120 mg/L", "120 ppm", which is the same of
/// water.
MassPerVolume parse_dissolved(std::string_view text, Measures measures = Measures::us);
/// Of hardness, as calcium carbonate: the same, or "15 grain/gal".
MassPerVolume parse_hardness(std::string_view text, Measures measures = Measures::us);
/// Of all that is dissolved: the same, or by conductivity: "1500 uS/cm".
std::variant<MassPerVolume, Conductivity> parse_solids(std::string_view text, Measures measures = Measures::us);

/// A quantity as written, its units not looked up: "4 oz per 128 gal" is 4 "oz" per 128 "gal". For units that have no
/// dimension here, such as IU.
struct Figure {
    double amount = 0;
    std::string unit;
    double per_amount = 1;
    std::string per_unit;  // empty when nothing stands after "per"
};
/// `expected` is the end of the fault's sentence: `a level such as "1650 IU/kg"`.
Figure parse_figure(std::string_view text, std::string const& expected);

/// One accepted unit, for the table of units and its test against GNU units.
struct Unit {
    std::string_view symbol;     // as printed
    std::string_view also;       // other spellings, separated by commas
    std::string_view dimension;  // "mass", "volume", "time", "length", "energy", "temperature", "percent", ...
    double factor;               // in the engine's unit: kg, L, d, m, kcal
    std::string_view exact;      // the definition as the authority states it
    std::string_view source;
};
std::span<Unit const> units();

}  // namespace cropful::quantities
