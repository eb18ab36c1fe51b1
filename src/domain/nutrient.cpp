#include "cropful/domain/nutrient.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"

namespace cropful::domain {

using namespace quantities;

namespace {

constexpr auto percent = NutrientUnit::percent;
constexpr auto milligrams = NutrientUnit::milligrams_per_kilogram;
constexpr auto international = NutrientUnit::units_per_kilogram;

constexpr std::array table = {
    Nutrient{"protein", "protein", percent, false, true},
    Nutrient{"energy", "metabolisable energy", NutrientUnit::kilocalories_per_kilogram, false, true},
    Nutrient{"arginine", "arginine", percent, false, true},
    Nutrient{"gly_ser", "glycine + serine", percent, false, true},
    Nutrient{"histidine", "histidine", percent, false, true},
    Nutrient{"isoleucine", "isoleucine", percent, false, true},
    Nutrient{"leucine", "leucine", percent, false, true},
    Nutrient{"lysine", "lysine", percent, false, true},
    Nutrient{"methionine", "methionine", percent, false, true},
    Nutrient{"met_cys", "methionine + cystine", percent, false, true},
    Nutrient{"phenylalanine", "phenylalanine", percent, false, true},
    Nutrient{"phe_tyr", "phenylalanine + tyrosine", percent, false, true},
    Nutrient{"threonine", "threonine", percent, false, true},
    Nutrient{"tryptophan", "tryptophan", percent, false, true},
    Nutrient{"valine", "valine", percent, false, true},
    Nutrient{"linoleic", "linoleic acid", percent, false, true},
    Nutrient{"calcium", "calcium", percent, false, false},
    Nutrient{"npp", "nonphytate phosphorus", percent, false, false},
    Nutrient{"sodium", "sodium", percent, false, false},
    Nutrient{"chlorine", "chlorine", percent, false, false},
    Nutrient{"potassium", "potassium", percent, false, false},
    Nutrient{"magnesium", "magnesium", milligrams, false, false},
    Nutrient{"copper", "copper", milligrams, false, false},
    Nutrient{"iodine", "iodine", milligrams, false, false},
    Nutrient{"iron", "iron", milligrams, false, false},
    Nutrient{"manganese", "manganese", milligrams, false, false},
    Nutrient{"selenium", "selenium", milligrams, false, false},
    Nutrient{"zinc", "zinc", milligrams, false, false},
    Nutrient{"vit_a", "vitamin A", international, false, true},
    Nutrient{"vit_d3", "vitamin D3", international, false, true},
    Nutrient{"vit_e", "vitamin E", international, false, true},
    Nutrient{"vit_k", "vitamin K", milligrams, false, true},
    Nutrient{"vit_b12", "vitamin B12", milligrams, false, true},
    Nutrient{"biotin", "biotin", milligrams, false, true},
    Nutrient{"choline", "choline", milligrams, false, true},
    Nutrient{"folacin", "folacin", milligrams, false, true},
    Nutrient{"niacin", "niacin", milligrams, false, true},
    Nutrient{"pantothenic", "pantothenic acid", milligrams, false, true},
    Nutrient{"pyridoxine", "pyridoxine", milligrams, false, true},
    Nutrient{"riboflavin", "riboflavin", milligrams, false, true},
    Nutrient{"thiamin", "thiamin", milligrams, false, true},
    Nutrient{"fat", "fat", percent, true, true},
    Nutrient{"fibre", "fibre", percent, true, true, "fiber", true},
    Nutrient{"phosphorus", "phosphorus (total)", percent, true, false},
    Nutrient{"salt", "salt", percent, true, false},
    Nutrient{"ash", "ash", percent, true, false},
    Nutrient{"moisture", "moisture", percent, true, false},
};

constexpr double milligrams_in_percent = 1e4;  // mg/kg in 1 %
constexpr double most_units = 1e9;             // IU/kg

std::string_view symbol(Nutrient const& nutrient) {
    switch (nutrient.unit) {
        case NutrientUnit::percent:
            return "%";
        case NutrientUnit::milligrams_per_kilogram:
            return "mg/kg";
        case NutrientUnit::units_per_kilogram:
            return "IU/kg";
        case NutrientUnit::kilocalories_per_kilogram:
            return "kcal/kg";
    }
    return "";
}

std::string expected(Nutrient const& nutrient) {
    std::string const what = "a level of " + std::string(nutrient.title) + " with its unit, such as ";
    switch (nutrient.unit) {
        case NutrientUnit::percent:
            return what + "\"1.25 %\"";
        case NutrientUnit::milligrams_per_kilogram:
            return what + "\"300 mg/kg\"";
        default:
            return what + "\"1650 " + std::string(symbol(nutrient)) + '"';
    }
}

/// Kilograms of feed the level is stated for; empty when `unit` is no such weight.
std::optional<double> kilograms_of_feed(quantities::Figure const& figure) {
    if (figure.per_unit == "kg") return figure.per_amount;
    if (figure.per_unit == "lb") return figure.per_amount * quantities::kilograms_per_pound;
    return std::nullopt;
}

std::optional<double> in_milligrams(std::string_view unit) {
    if (unit == "g") return 1000;
    if (unit == "mg") return 1;
    if (unit == "mcg" || unit == "ug" || unit == "µg") return 1e-3;
    return std::nullopt;
}

/// One of the unit, in mg/kg.
std::optional<double> part_by_weight(quantities::Figure const& figure) {
    if (figure.per_unit.empty()) {
        if (figure.unit == "%" || figure.unit == "percent") return milligrams_in_percent;
        if (figure.unit == "ppm") return 1;
        return std::nullopt;
    }
    auto const weight = in_milligrams(figure.unit);
    auto const feed = kilograms_of_feed(figure);
    if (!weight || !feed) return std::nullopt;
    return *weight / *feed;
}

std::optional<double> part_in_units(quantities::Figure const& figure) {
    auto const feed = kilograms_of_feed(figure);
    if (!feed || (figure.unit != "IU" && figure.unit != "ICU")) return std::nullopt;
    return 1 / *feed;
}

}  // namespace

std::span<Nutrient const> nutrients() { return table; }

Nutrient const* find_nutrient(std::string_view key) {
    auto const found = std::find_if(table.begin(), table.end(),
                                    [&](Nutrient const& n) { return n.key == key || (!key.empty() && n.also == key); });
    return found == table.end() ? nullptr : &*found;
}

double parse_level(Nutrient const& nutrient, std::string_view text) {
    if (nutrient.unit == NutrientUnit::kilocalories_per_kilogram) {
        return quantities::in_kilocalories_per_kilogram(quantities::parse_energy(text));
    }
    quantities::Figure const figure = quantities::parse_figure(text, expected(nutrient));
    bool const in_units = nutrient.unit == international;
    auto const part = in_units ? part_in_units(figure) : part_by_weight(figure);
    double const own = nutrient.unit == percent ? milligrams_in_percent : 1;
    double const most = in_units ? most_units : 100 * milligrams_in_percent / own;
    if (!part || figure.amount * (*part / own) > most) {
        throw BadInput('"' + std::string(text) + '"' + (part ? " (more than the whole feed)" : ""), expected(nutrient));
    }
    return *part >= own ? figure.amount * (*part / own) : figure.amount / (own / *part);
}

std::string print_level(Nutrient const& nutrient, double level) {
    return quantities::plain(level) + ' ' + std::string(symbol(nutrient));
}

}  // namespace cropful::domain
