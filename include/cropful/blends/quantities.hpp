#pragma once

#include "cropful/quantities/text.hpp"

/// The quantities that the headers of this room speak of.
namespace cropful::blends {

using quantities::EnergyPerMass;
using quantities::Mass;
using quantities::Money;
using quantities::MoneyPerMass;

}  // namespace cropful::blends
