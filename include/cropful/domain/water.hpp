#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cropful/domain/moment.hpp"
#include "cropful/quantities/text.hpp"

/// What a laboratory found in a farm's water.
namespace cropful::domain {

/// What a report may state.
struct WaterItem {
    std::string_view key;
    std::string_view title;  // "hardness"
    std::string_view unit;   // of its figure: "mg/L CaCO3"
};
/// All of them, in the order in which pages name them.
std::vector<WaterItem> const& water_items();
/// Null for none of them.
WaterItem const* find_water_item(std::string_view key);

/// As the farm's owner wrote it: what is absent was not stated.
struct WaterReport {
    std::map<std::string, quantities::MassPerVolume> found{};  // by an item's key; hardness as calcium carbonate
    std::optional<quantities::Conductivity> conductivity{};    // in place of tds
    std::optional<quantities::MassPerVolume> nitrate_n{};      // the nitrogen of the nitrate, in place of nitrate
    std::optional<double> ph{};
    std::optional<double> coliforms{};  // in 100 mL
    std::optional<Moment> sampled{};
    bool softened = false;       // what birds drink comes through a softener
    bool sampled_after = false;  // and so did the sample
};

}  // namespace cropful::domain
