#pragma once

#include <string>
#include <vector>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace cropful::reports {

/// "10.6 g = 2 1/8 tsp (10.5 mL)", "3 fl oz of stock holding 12 g of product".
std::string dose_words(engine::Dose const& dose, quantities::Measures measures);

/// The product alone, by weight where that is known.
std::string product_words(engine::Dose const& dose, quantities::Measures measures);

/// "Chick tonic, 1 tsp per gal, mixed fresh each day".
std::string course_words(engine::Mix const& mix, domain::Farm const& farm);
/// What to know when mixing it: sentences.
std::vector<std::string> course_notes(engine::Mix const& mix, domain::Farm const& farm);
/// The courses of one hatch, a row for every batch, or for every one before a moment; empty without any.
Page course_part(engine::HatchPlan const& hatch, domain::Farm const& farm,
                 std::optional<engine::Moment> before = std::nullopt);

/// A proportioner's stock, day by day for all hatches on its line, and when its tank is mixed.
Page stock_part(engine::Plan const& plan, engine::StockLine const& line);

/// What to stir in, batch by batch, for every hatch that has a supplement.
Page mix_page(engine::Plan const& plan, Sources sources);

/// The same for an amount of water, without birds; `mix` has no batches.
Page plain_mix_page(engine::Mix const& mix, domain::Supplement const& supplement,
                    std::vector<engine::Caution> const& cautions, quantities::Measures measures, Sources sources);

}  // namespace cropful::reports
