#pragma once

#include <string>
#include <vector>

#include "cropful/domain/standing.hpp"
#include "cropful/reports/page.hpp"

/// Sources that are numbered on a page and stand in full at its end.
namespace cropful::reports {

/// "derived, source 2": a long source is numbered, once, and kept among `sources`; a short one stands in full.
std::string source_words(domain::Source const& source, std::vector<std::string>& sources);
/// The numbered ones under their heading; empty without any.
Page sources_part(std::vector<std::string> const& sources);

}  // namespace cropful::reports
