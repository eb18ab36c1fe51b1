#pragma once

#include <string>

#include "cropful/engine/overview.hpp"

namespace cropful::reports {

/// What does not fit, with the nearest dates on which it would; that all fits; empty without brooders.
std::string unplaced_text(engine::Overview const& season);
/// Every brooder in the first seven days: who is in it, and who is next.
std::string first_week_text(engine::Overview const& season);
/// A row for each hatch that gets brooders, and the hatches that name none.
std::string stays_text(engine::Overview const& season);

}  // namespace cropful::reports
