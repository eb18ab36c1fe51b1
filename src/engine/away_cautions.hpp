#pragma once

#include "cropful/engine/away.hpp"

namespace cropful::engine {

/// What else can go wrong while nobody is there.
std::vector<Caution> away_cautions(Away const& away, Rations const& rations);

}  // namespace cropful::engine
