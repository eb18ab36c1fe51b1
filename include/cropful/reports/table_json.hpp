#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "cropful/quantities/text.hpp"
#include "cropful/rations/kind.hpp"

/// What is built in, as JSON text.
namespace cropful::reports {

std::string index_json(std::vector<std::string> const& lists);
std::string kinds_json(std::vector<rations::Kind> const& kinds);
std::string kind_json(rations::Kind const& kind, rations::NeedsTable const& needs);
std::string needs_list_json(std::vector<rations::NeedsTable> const& tables);
std::string needs_json(rations::NeedsTable const& needs);
std::string units_json(std::span<quantities::Unit const> units);
std::string drugs_json(std::vector<rations::Drug> const& drugs);
std::string limits_json(std::vector<rations::Limit> const& limits);
std::string water_table_json(rations::WaterTable const& water);
std::string forms_json(std::map<std::string, rations::FormDensity> const& forms);
std::string powders_json(std::vector<rations::Powder> const& powders);

}  // namespace cropful::reports
