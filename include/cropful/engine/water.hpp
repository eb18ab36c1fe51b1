#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/rations.hpp"

/// Whether a farm's water is fit for its birds.
namespace cropful::engine {

/// One item of a laboratory's report.
struct WaterFigure {
    std::string item;
    double value = 0;  // in the item's unit
};
/// What birds drink, behind the softener where there is one, before anything is stirred in; in the order of
/// domain::water_items(). What the report does not state is not there.
std::vector<WaterFigure> as_drunk(domain::WaterReport const& report, WaterTable const& table);

/// The worst that holds of one item for any of the birds.
struct WaterFinding {
    WaterFigure figure;
    WaterGrade grade = WaterGrade::fits;
    std::optional<WaterRow> row;  // none where it fits
    std::string hatch;            // the first it holds for
    std::string kind;
    Duration age;  // the earliest at which it does
};

/// Sodium in what is drunk. What is not known is not there, and `sum` is what is known.
struct SodiumSum {
    std::optional<MassPerVolume> well;
    std::optional<MassPerVolume> softener;
    std::optional<MassPerVolume> product;
    MassPerVolume sum;
    WaterGrade grade = WaterGrade::fits;
    std::optional<WaterRow> row;
    std::string supplement;  // its key; empty for plain water
    std::string hatch;       // empty for whoever drinks it
    Duration from;           // ages of the course, or of the hatch
    Duration to;
    /// What is in the water before the product.
    [[nodiscard]] MassPerVolume before() const {
        return well.value_or(MassPerVolume()) + softener.value_or(MassPerVolume());
    }
    /// Whether anything but what is not there is known.
    [[nodiscard]] bool is_known() const {
        return well || softener > MassPerVolume() || (product && !supplement.empty());
    }
};
/// Of plain water, or with a supplement in it; not graded.
SodiumSum sodium_sum(std::optional<domain::WaterReport> const& report, domain::Supplement const* supplement,
                     WaterTable const& table);
/// Graded for whoever drinks it.
SodiumSum sodium_for_all(std::optional<domain::WaterReport> const& report, domain::Supplement const& supplement,
                         WaterTable const& table);

/// A bleach in drinking water: C1 V1 = C2 V2.
struct ChlorineDose {
    MassPerVolume wanted;  // available chlorine in the water
    double bleach = 0;     // available chlorine of the product, kg in 1 L: 0.0825 of 8.25 %
    Volume water;          // with the product in it
    std::optional<domain::Proportioner> proportioner{};  // `water` is a stock that goes in through it
    [[nodiscard]] MassPerVolume in_water() const { return proportioner ? wanted / proportioner->share() : wanted; }
    [[nodiscard]] Volume product() const;
};
std::vector<domain::Caution> chlorine_cautions(ChlorineDose const& dose, WaterTable const& table);

}  // namespace cropful::engine
