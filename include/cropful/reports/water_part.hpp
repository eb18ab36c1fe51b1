#pragma once

#include <string>
#include <vector>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/plan_parts.hpp"

/// Whether a farm's water is fit, in words.
namespace cropful::reports {

/// "1,180 mg/L", "7.2", "0 per 100 mL".
std::string found_words(double value, std::string const& unit);
/// "198 mg/L of sodium: well 40, softener 0, product 158"; what is not known is said to be.
std::string sodium_words(engine::SodiumSum const& sum);
/// The laboratory's report, the worst first, what it does not state, and sodium in the worst course; empty without a
/// report.
Page water_part(engine::Plan const& plan);

/// Bleach for drinking water.
Page chlorine_page(engine::ChlorineDose const& dose, std::vector<engine::Caution> const& cautions,
                   quantities::Measures measures, Sources sources);

}  // namespace cropful::reports
