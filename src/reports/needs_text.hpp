#pragma once

#include <string>
#include <vector>

#include "cropful/rations/kind.hpp"

namespace cropful::reports {

/// A table of needs from its title on, without its sources: those are numbered in `sources`.
std::string needs_body(rations::NeedsTable const& needs, std::vector<std::string>& sources);

}  // namespace cropful::reports
