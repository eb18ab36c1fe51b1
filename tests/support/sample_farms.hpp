#pragma once

#include <string>

#include "cropful/engine/plan.hpp"
#include "cropful/readers/farm.hpp"

/// Invented farms for the tests.
namespace cropful::sample {

/// Reads `text` as a farm file.
domain::Farm farm_from(std::string const& text);
/// Of a file, such as "rations/farms/backyard.toml".
domain::Farm farm_in(std::string const& path);

/// Reads and plans.
engine::Plan plan_of(std::string const& text, engine::Window window = {});
engine::Plan plan_of(domain::Farm const& farm, engine::Window window = {});
/// The built-in rations as if all flocks were alike: low and high columns are the central one. What a hopper weighs
/// still varies, by 5 %.
rations::Rations without_spread(domain::Farm const& farm);

/// 240 bobwhites to 16 weeks on two feeds, three hoppers, six drinkers, birds removed at 8 weeks, US units.
std::string bobwhites();
/// The same farm in metric units, figure for figure.
std::string bobwhites_metric();

/// What a grown bobwhite that does not lay eats, g a day (the last knots of rations/birds/bobwhite.toml).
inline constexpr double grown_bobwhite = 16.7;

/// Grown bobwhites, day 200 to 221, that eat 1 kg a day and drink 2 L: starter (0.5 kg/L) to day 207, then grower
/// (0.6 kg/L), without energies; one 10 L hopper and one 4 L drinker, nothing wasted, spilt or left behind. Bags of
/// 40 kg at 20 and 30.
domain::Farm round_figures();

}  // namespace cropful::sample
