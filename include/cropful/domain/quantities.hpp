#pragma once

#include "cropful/quantities/text.hpp"

/// The quantities that the headers of this room speak of.
namespace cropful::domain {

using quantities::birds;
using quantities::days;
using quantities::Duration;
using quantities::EnergyPerMass;
using quantities::Heads;
using quantities::kilocalories_per_kilogram;
using quantities::kilograms;
using quantities::Length;
using quantities::litres;
using quantities::Mass;
using quantities::MassPerVolume;
using quantities::Measures;
using quantities::Money;
using quantities::money;
using quantities::MoneyPerMass;
using quantities::MoneyPerMassDay;
using quantities::Proportioner;
using quantities::Rate;
using quantities::Temperature;
using quantities::Volume;

}  // namespace cropful::domain
