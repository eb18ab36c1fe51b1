#pragma once

#include <string>

#include "cropful/engine/overview.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::reports {

/// What does not fit, with the nearest dates on which it would; that all fits; empty without brooders.
Page unplaced_part(engine::Overview const& season);
/// Every brooder in the first seven days: who is in it, and who is next.
Page first_week_part(engine::Overview const& season);
/// A row for each hatch that gets brooders, and the hatches that name none.
Page stays_part(engine::Overview const& season);

}  // namespace cropful::reports
