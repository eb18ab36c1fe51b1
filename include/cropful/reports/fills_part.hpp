#pragma once

#include <optional>
#include <string>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::reports {

/// What is put into the hoppers and drinkers of a hatch before a moment, stage by stage, long lists folded into weeks
/// and runs of one rhythm; without one, every fill. Empty without vessels.
Page hoppers_part(engine::HatchPlan const& hatch, quantities::Measures measures, std::optional<engine::Moment> before);
Page drinkers_part(engine::HatchPlan const& hatch, quantities::Measures measures, std::optional<engine::Moment> before);

/// "3 x tube, 12.3 lb each when full"; "3 x tube, each full with 34.7 kg of starter or 33.1 kg of grower" where feeds
/// differ in density. With at least one fill.
std::string hoppers_words(engine::HatchPlan const& hatch, engine::Vessels<quantities::Mass> const& hoppers,
                          quantities::Measures measures);
std::string drinkers_words(engine::Vessels<quantities::Volume> const& drinkers, quantities::Measures measures);
/// "pens 1-4", "2 pens" where they have no numbers; empty where no house is named.
std::string house_words(engine::StagePlan const& stage);
/// The same before what stands in them: "pens 1-4: ".
std::string of_houses(engine::StagePlan const& stage);

/// Whether the next fill comes because the water or what is in it is due, not because the vessel is dry.
bool changed_before_dry(engine::Fill<quantities::Volume> const& fill);
/// "to 40 % full", "to the brim".
std::string level_words(double share_of_full);
/// Whole days once there are several: the middle of a band is no promise.
std::string roughly(std::optional<quantities::Duration> const& lasts);
/// The feed eaten at an age; empty outside the plan.
std::string feed_at(engine::HatchPlan const& hatch, quantities::Duration age);
/// The feed that is poured in at an age because the last one ends then; empty when no change is due.
std::string feed_from(engine::HatchPlan const& hatch, quantities::Duration age);
/// What comes at the end of a fill: a time, "grower from Mon 17 May", "the move to pens", or "the end".
std::string fill_again_words(engine::Fill<quantities::Mass> const& fill, engine::HatchPlan const& hatch,
                             quantities::Measures measures);

}  // namespace cropful::reports
