#pragma once

#include <string>

#include "cropful/engine/plan.hpp"

/// Answers as one table for a spreadsheet: CSV with a heading, in the farm's units, every digit kept. Names that begin
/// as a formula does stand behind an apostrophe.
namespace cropful::reports {

/// One row for each hatch and week of its life: birds, and the feed and water of the week's first day.
std::string plan_csv(engine::Plan const& plan);
/// One row for each feed, supplement, bedding and disinfectant to buy; bags, packs and their cost are the safe ones.
std::string buy_csv(engine::Plan const& plan);
/// One row for each hatch's hoppers and drinkers: how long the first fill lasts.
std::string last_csv(engine::Plan const& plan);

}  // namespace cropful::reports
