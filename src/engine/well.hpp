#pragma once

#include "cropful/engine/plan.hpp"
#include "engine/assumptions.hpp"
#include "engine/caution_list.hpp"
#include "engine/intake.hpp"

namespace cropful::engine {

using namespace quantities;

/// Judges the water of a plan: every item of the report, sodium in every course, sodium of the diet. `now` is when it
/// is asked.
void add_water(Plan& plan, Rations const& rations, Moment now);
/// What a softener between the sample and the birds puts in: no sodium without one, an unknown amount where the
/// hardness is.
std::optional<MassPerVolume> softener_sodium(domain::WaterReport const& report, WaterTable const& table);
/// Whether there is one.
bool is_softened_since(domain::WaterReport const& report);
/// What is drunk for the feed eaten, in the middle of the ages of each sodium check.
void add_thirst(std::vector<Check>& checks, Intake const& intake);
/// Adds the sodium of what is drunk to that of the feeds.
void add_diet_sodium(Plan& plan, WaterTable const& table);

/// Of the water alone.
void well_cautions(CautionList& list, Plan const& plan, Rations const& rations);
/// Of what is stirred into it, and of the feed beside it.
void hatch_water_cautions(CautionList& list, Plan const& plan, HatchPlan const& part);
void about_well(AssumptionList& list, Plan const& plan, Rations const& rations);

}  // namespace cropful::engine
