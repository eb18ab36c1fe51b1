#pragma once

#include "cropful/engine/plan.hpp"

namespace cropful::engine {

/// Everything the plan rests on that its owner did not measure, each once, with its standing.
std::vector<Assumption> assumptions(Plan const& plan, Rations const& rations);

}  // namespace cropful::engine
