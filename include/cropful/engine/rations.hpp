#pragma once

#include "cropful/engine/quantities.hpp"
#include "cropful/rations/brooder_advice.hpp"
#include "cropful/rations/kind.hpp"

/// What the engine works with of the rations.
namespace cropful::engine {

using domain::Source;
using rations::BrooderAdvice;
using rations::Brooding;
using rations::BroodingRow;
using rations::Drinking;
using rations::Drug;
using rations::EnergyResponse;
using rations::FormDensity;
using rations::Graded;
using rations::Growing;
using rations::HatchRate;
using rations::HeatResponse;
using rations::Kind;
using rations::LampRule;
using rations::Laying;
using rations::Limit;
using rations::Mortality;
using rations::Need;
using rations::NeedsNote;
using rations::NeedsTable;
using rations::Phase;
using rations::Powder;
using rations::Rations;
using rations::Sign;
using rations::SodiumCeiling;
using rations::Space;
using rations::SpaceRow;
using rations::WaterGrade;
using rations::WaterRatio;
using rations::WaterRow;
using rations::WaterTable;

}  // namespace cropful::engine
