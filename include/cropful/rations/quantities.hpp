#pragma once

#include "cropful/quantities/text.hpp"

/// The quantities that the headers of this room speak of.
namespace cropful::rations {

using quantities::birds;
using quantities::days;
using quantities::Duration;
using quantities::EnergyPerMass;
using quantities::litres;
using quantities::litres_per_gallon;
using quantities::Mass;
using quantities::MassPerVolume;
using quantities::PerWarmth;
using quantities::ratio;
using quantities::Temperature;

}  // namespace cropful::rations
