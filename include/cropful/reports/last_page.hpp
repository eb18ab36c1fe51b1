#pragma once

#include <optional>
#include <string>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace cropful::reports {

/// How long full hoppers and drinkers last from `at`, or from each hatch's start.
Page last_page(engine::Plan const& plan, std::optional<engine::Moment> at, Sources sources);

}  // namespace cropful::reports
