#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "cropful/quantities/text.hpp"
#include "cropful/rations/kind.hpp"
#include "cropful/reports/page.hpp"

/// What is built in, as text, each group with its source.
namespace cropful::reports {

Page index_page();
Page kinds_page(std::vector<rations::Kind> const& kinds);
Page kind_page(rations::Kind const& kind, rations::NeedsTable const& needs, quantities::Measures measures);
Page needs_list_page(std::vector<rations::NeedsTable> const& tables);
Page needs_page(rations::NeedsTable const& needs);
Page units_page(std::span<quantities::Unit const> units);
Page drugs_page(std::vector<rations::Drug> const& drugs, quantities::Measures measures);
Page limits_page(std::vector<rations::Limit> const& limits);
Page water_page(rations::WaterTable const& water);
Page forms_page(std::map<std::string, rations::FormDensity> const& forms);
Page powders_page(std::vector<rations::Powder> const& powders);

}  // namespace cropful::reports
