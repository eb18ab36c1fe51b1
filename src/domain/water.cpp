#include "cropful/domain/water.hpp"

#include "cropful/domain/ranges.hpp"

namespace cropful::domain {

std::vector<WaterItem> const& water_items() {
    static std::vector<WaterItem> const all{{"tds", "dissolved solids", "mg/L"},
                                            {"sodium", "sodium", "mg/L"},
                                            {"chloride", "chloride", "mg/L"},
                                            {"sulfate", "sulfate", "mg/L"},
                                            {"nitrate", "nitrate", "mg/L NO3"},
                                            {"nitrite", "nitrite", "mg/L NO2"},
                                            {"iron", "iron", "mg/L"},
                                            {"manganese", "manganese", "mg/L"},
                                            {"hardness", "hardness", "mg/L CaCO3"},
                                            {"ph", "pH", "pH"},
                                            {"coliforms", "coliforms", "per 100 mL"}};
    return all;
}

WaterItem const* find_water_item(std::string_view key) {
    auto const& all = water_items();
    auto const found = ranges::find(all, key, &WaterItem::key);
    return found == all.end() ? nullptr : &*found;
}

}  // namespace cropful::domain
