#pragma once

#include <string>

#include "cropful/engine/overview.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace cropful::reports {

/// What does not fit, who is where in the first week, who comes and goes, the weeks, what the feed costs, and what
/// readies the brooders.
Page season_page(engine::Overview const& season, Sources sources);

}  // namespace cropful::reports
