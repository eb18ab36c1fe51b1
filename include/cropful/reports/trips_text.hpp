#pragma once

#include <string>

#include "cropful/engine/buying.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::reports {

/// The next trip, then all of them, what they cost, and what other ways to shop would.
std::string trips_text(engine::TripPlan const& trips, Sources sources);
/// The same as JSON text.
std::string trips_json(engine::TripPlan const& trips);

}  // namespace cropful::reports
