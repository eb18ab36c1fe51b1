#pragma once

#include "cropful/engine/plan.hpp"

namespace cropful::engine {

/// What can hurt birds or people in this plan, gravest first; each defers to the label, the veterinarian and the law.
std::vector<Caution> cautions(Plan const& plan, Rations const& rations);

}  // namespace cropful::engine
