#pragma once

#include <string>
#include <vector>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace cropful::reports {

/// "SHORT by 2 points (7.7 %)", "meets", "OVER: too much for growing birds", "not on the label".
std::string verdict_words(engine::Check const& check);

/// What is short or over on the labels of one hatch's feeds.
std::vector<std::string> label_faults(engine::HatchPlan const& hatch);
/// The same, and how much was met and not stated; empty without checks.
std::vector<std::string> labels_words(engine::HatchPlan const& hatch);
Page labels_part(engine::HatchPlan const& hatch, bool faults_alone = false);

/// Every nutrient of every feed against its need.
Page check_page(engine::Plan const& plan, Sources sources);

}  // namespace cropful::reports
