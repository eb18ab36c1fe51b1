#pragma once

#include <string>

#include "cropful/engine/overview.hpp"

namespace cropful::reports {

std::string season_json(engine::Overview const& season);

}  // namespace cropful::reports
