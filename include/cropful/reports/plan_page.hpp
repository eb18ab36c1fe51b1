#pragma once

#include <string>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace cropful::reports {

enum class Detail { one_page, everything };

/// The page a grower acts on: what to buy, when to fill, what to stir in, what to watch. `everything` lists every fill
/// and the feed and water of a day by weeks.
Page plan_page(engine::Plan const& plan, Detail detail, Sources sources);

}  // namespace cropful::reports
