#pragma once

#include <string>

#include "cropful/engine/plan.hpp"

namespace cropful::reports {

/// How often the hoppers and drinkers of a hatch are filled. Long lists are folded into weeks and runs of one rhythm
/// unless every fill is asked for; empty without vessels.
std::string hoppers_text(engine::HatchPlan const& hatch, quantities::Measures measures, bool every_fill);
std::string drinkers_text(engine::HatchPlan const& hatch, quantities::Measures measures, bool every_fill);

/// Whether the next fill comes because the water or what is in it is due, not because the vessel is dry.
bool changed_before_dry(engine::Fill<quantities::Volume> const& fill);
/// The feed that is poured in at an age because the last one ends then; empty when no change is due.
std::string feed_from(engine::HatchPlan const& hatch, quantities::Duration age);

}  // namespace cropful::reports
