#pragma once

#include <string>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::reports {

/// Bags and packs with what they cost, without notes: the first part of a plan.
std::string purchases_text(engine::Plan const& plan);

/// What to buy, by when, and why.
std::string buy_text(engine::Plan const& plan, Sources sources);

}  // namespace cropful::reports
