#pragma once

#include <string>

#include "cropful/blends/blend.hpp"
#include "cropful/reports/page.hpp"

/// The part of a blend's page that is read at the scale.
namespace cropful::reports {

/// An amount as a scale with this step shows it: "55 lb 3 oz", "2.5 oz"; "5.3 lb"; "25.05 kg", "120 g". What is no
/// whole number of steps is shown to three decimals.
std::string on_scale(quantities::Mass amount, quantities::Mass step, quantities::Measures measures);

/// The weight prices are given for: 100 lb, 100 kg, or a tonne for batches of a tonne and more.
struct PerWeight {
    quantities::Mass weight;
    std::string words;
};
PerWeight per_weight(blends::BlendAnswer const& answer, quantities::Measures measures);

/// What to weigh, in the order of work, with a running total: small amounts, then from the largest on, then liquids.
Page mixing_sheet(blends::BlendAnswer const& answer, domain::Farm const& farm);

}  // namespace cropful::reports
