#pragma once

#include <string>

#include "cropful/engine/season.hpp"

namespace cropful::reports {

std::string season_json(engine::Season const& season);

}  // namespace cropful::reports
