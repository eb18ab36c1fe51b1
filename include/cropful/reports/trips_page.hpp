#pragma once

#include <string>

#include "cropful/engine/buying.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace cropful::reports {

/// The next trip, then all of them, what they cost, and what other ways to shop would.
Page trips_page(engine::TripPlan const& trips, Sources sources);
/// The same as JSON text.
std::string trips_json(engine::TripPlan const& trips);

}  // namespace cropful::reports
