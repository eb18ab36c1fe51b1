#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace cropful::domain {

/// What a nutrient is counted in.
enum class NutrientUnit { percent, milligrams_per_kilogram, units_per_kilogram, kilocalories_per_kilogram };

struct Nutrient {
    std::string_view key;    // as in the needs tables: "protein", "met_cys"
    std::string_view title;  // "methionine + cystine"
    NutrientUnit unit;
    bool label_only;             // on labels but in no needs table: fat, fibre, phosphorus (total), salt
    bool organic;                // no mineral holds any: protein, energy, fat, fibre, vitamins, ...
    std::string_view also = {};  // another spelling of its key
    bool label_maximum = false;  // labels state the most of it, not the least
};

std::span<Nutrient const> nutrients();
/// By its key or the other spelling of it; null for another word.
Nutrient const* find_nutrient(std::string_view key);

/// "1.25 %", "300 mg/kg", "1650 IU/kg", "2900 kcal/kg" in the nutrient's own unit; throws BadInput.
double parse_level(Nutrient const& nutrient, std::string_view text);
std::string print_level(Nutrient const& nutrient, double level);

}  // namespace cropful::domain
