#pragma once

#include <string>

#include "cropful/engine/away.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace cropful::reports {

/// Whether everything holds, by when somebody must come, and how full to leave each vessel.
Page away_page(engine::Away const& away, Sources sources);

/// "43 times in 100"; "19 times in 20" for 95 %.
std::string chance_words(double chance);

}  // namespace cropful::reports
