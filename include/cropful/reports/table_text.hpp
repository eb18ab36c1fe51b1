#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "cropful/quantities/text.hpp"
#include "cropful/rations/kind.hpp"

/// What is built in, as text, each group with its source.
namespace cropful::reports {

std::string index_text();
std::string kinds_text(std::vector<rations::Kind> const& kinds);
std::string kind_text(rations::Kind const& kind, rations::NeedsTable const& needs, quantities::Measures measures);
std::string needs_list_text(std::vector<rations::NeedsTable> const& tables);
std::string needs_text(rations::NeedsTable const& needs);
std::string units_text(std::span<quantities::Unit const> units);
std::string drugs_text(std::vector<rations::Drug> const& drugs, quantities::Measures measures);
std::string limits_text(std::vector<rations::Limit> const& limits);
std::string forms_text(std::map<std::string, rations::FormDensity> const& forms);
std::string powders_text(std::vector<rations::Powder> const& powders);

}  // namespace cropful::reports
