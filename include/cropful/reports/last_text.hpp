#pragma once

#include <optional>
#include <string>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::reports {

/// How long full hoppers and drinkers last from `at`, or from each hatch's start.
std::string last_text(engine::Plan const& plan, std::optional<engine::Moment> at, Sources sources);

}  // namespace cropful::reports
