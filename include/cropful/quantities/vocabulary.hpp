#pragma once

#include <utility>

#include "cropful/quantities/dimensions.hpp"

/// The named quantities, each derived from the ones above it. One unit per dimension: kg, d, L, kcal, K, bird,
/// the farm's currency, m.
namespace cropful::quantities {

template <class Left, class Right>
using Product = decltype(std::declval<Left>() * std::declval<Right>());
template <class Left, class Right>
using Quotient = decltype(std::declval<Left>() / std::declval<Right>());

using Mass = base::Quantity<base::Mass>;
using Duration = base::Quantity<base::Time>;
using Volume = base::Quantity<base::Volume>;
using Energy = base::Quantity<base::Energy>;
using WarmthStep = base::Quantity<base::Warmth>;  // a difference; points are Temperature
using Heads = base::Quantity<base::Heads>;
using Money = base::Quantity<base::Money>;
using Length = base::Quantity<base::Length>;

// Per mass or volume.
using MassPerVolume = Quotient<Mass, Volume>;    // bulk density of feed, strength of a solution, a spoon's weight
using EnergyPerMass = Quotient<Energy, Mass>;    // metabolisable energy of a feed
using VolumePerMass = Quotient<Volume, Mass>;    // water drunk per feed eaten
using MoneyPerMass = Quotient<Money, Mass>;      // price of an ingredient
using PerWarmth = Quotient<double, WarmthStep>;  // response per degree

// Over time.
using MassFlow = Quotient<Mass, Duration>;
using VolumeFlow = Quotient<Volume, Duration>;
using MoneyPerMassDay = Quotient<MoneyPerMass, Duration>;  // what it costs to keep feed
using MassPerBirdDay = Quotient<MassFlow, Heads>;
using VolumePerBirdDay = Quotient<VolumeFlow, Heads>;

}  // namespace cropful::quantities
