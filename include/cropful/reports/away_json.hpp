#pragma once

#include <string>

#include "cropful/engine/away.hpp"

namespace cropful::reports {

std::string away_json(engine::Away const& away);

}  // namespace cropful::reports
