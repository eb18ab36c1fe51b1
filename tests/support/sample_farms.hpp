#pragma once

#include <string>

#include "cropful/engine/plan.hpp"
#include "cropful/readers/farm.hpp"

/// Invented farms for the tests.
namespace cropful::sample {

/// Writes `text` to a file of its own in the temporary folder and reads it as a farm.
domain::Farm farm_from(std::string const& text);

/// Reads and plans.
engine::Plan plan_of(std::string const& text, engine::Window window = {});
engine::Plan plan_of(domain::Farm const& farm, engine::Window window = {});

/// 240 bobwhites to 16 weeks on two feeds, three hoppers, six drinkers, birds removed at 8 weeks, US units.
std::string bobwhites();
/// The same farm in metric units, figure for figure.
std::string bobwhites_metric();

}  // namespace cropful::sample
