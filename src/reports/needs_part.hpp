#pragma once

#include <string>
#include <vector>

#include "cropful/rations/kind.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::reports {

/// A table of needs from its title on, without its sources: those are numbered in `sources`.
Page needs_body(rations::NeedsTable const& needs, std::vector<std::string>& sources);

}  // namespace cropful::reports
