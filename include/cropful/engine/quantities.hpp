#pragma once

#include "cropful/quantities/text.hpp"

/// The quantities that the headers of this room speak of.
namespace cropful::engine {

using quantities::birds;
using quantities::days;
using quantities::Duration;
using quantities::Heads;
using quantities::Mass;
using quantities::MassPerVolume;
using quantities::Money;
using quantities::MoneyPerMassDay;
using quantities::Volume;
using quantities::VolumePerMass;

}  // namespace cropful::engine
