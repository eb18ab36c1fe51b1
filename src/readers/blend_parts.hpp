#pragma once

#include <map>
#include <string>
#include <vector>

#include "cropful/domain/blend.hpp"
#include "cropful/domain/nutrient.hpp"
#include "cropful/rations/blend_tables.hpp"
#include "readers/forms.hpp"

/// What blends are read from. All throw BadInput with file, line and key.
namespace cropful::readers {

std::vector<domain::Ingredient> read_ingredients(Document document);
rations::BlendTables read_blend_tables(Document document);  // without limits

/// One level, or a list of the least and the most.
inline auto level_or_two(domain::Nutrient const& nutrient) {
    return [&nutrient](Value const& value) {
        auto const level = [&](Value const& item) { return parse_level(nutrient, a_text(item)); };
        if (!value.get<List>()) return std::vector<double>{level(value)};
        std::vector<double> levels = list_of(level)(value);
        if (levels.size() != 2 || levels[0] > levels[1]) throw value.refuse("one level, or the least and the most");
        return levels;
    };
}

/// Every nutrient a table states.
std::map<std::string, domain::Level> read_holds(Table& table, domain::Standing standing);

}  // namespace cropful::readers
