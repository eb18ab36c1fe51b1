#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "cropful/engine/kind.hpp"
#include "cropful/quantities/text.hpp"

/// What is built in, as text, each group with its source.
namespace cropful::reports {

std::string index_text();
std::string kinds_text(std::vector<engine::Kind> const& kinds);
std::string kind_text(engine::Kind const& kind, engine::NeedsTable const& needs, quantities::Measures measures);
std::string needs_list_text(std::vector<engine::NeedsTable> const& tables);
std::string needs_text(engine::NeedsTable const& needs);
std::string units_text(std::span<quantities::Unit const> units);
std::string drugs_text(std::vector<engine::Drug> const& drugs, quantities::Measures measures);
std::string limits_text(std::vector<engine::Limit> const& limits);
std::string forms_text(std::map<std::string, engine::FormDensity> const& forms);
std::string powders_text(std::vector<engine::Powder> const& powders);

}  // namespace cropful::reports
