#pragma once

#include <boost/units/base_dimension.hpp>
#include <boost/units/base_unit.hpp>
#include <boost/units/make_system.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/unit.hpp>

/// All base dimensions and base units of the project, one unit per dimension, with their ordinals: the only file
/// that holds ordinals. Volume and energy are base dimensions of their own (no mechanics is done here), so that
/// nothing prints as cubic metres of joules; bird and money are counted like any other amount.
namespace cropful::quantities::base {

// Ordinals 1-8, one for each dimension and its unit.
struct Mass : boost::units::base_dimension<Mass, 1> {};
struct Time : boost::units::base_dimension<Time, 2> {};
struct Volume : boost::units::base_dimension<Volume, 3> {};
struct Energy : boost::units::base_dimension<Energy, 4> {};
struct Warmth : boost::units::base_dimension<Warmth, 5> {};
struct Heads : boost::units::base_dimension<Heads, 6> {};
struct Money : boost::units::base_dimension<Money, 7> {};
struct Length : boost::units::base_dimension<Length, 8> {};

struct Kilogram : boost::units::base_unit<Kilogram, Mass::dimension_type, 1> {};
struct Day : boost::units::base_unit<Day, Time::dimension_type, 2> {};
struct Litre : boost::units::base_unit<Litre, Volume::dimension_type, 3> {};
struct Kilocalorie : boost::units::base_unit<Kilocalorie, Energy::dimension_type, 4> {};  // 4184 J
struct Kelvin : boost::units::base_unit<Kelvin, Warmth::dimension_type, 5> {};
struct Bird : boost::units::base_unit<Bird, Heads::dimension_type, 6> {};
struct Coin : boost::units::base_unit<Coin, Money::dimension_type, 7> {};  // one unit of the farm's currency
struct Metre : boost::units::base_unit<Metre, Length::dimension_type, 8> {};

using System = boost::units::make_system<Kilogram, Day, Litre, Kilocalorie, Kelvin, Bird, Coin, Metre>::type;

template <class Dimension>
using Quantity = boost::units::quantity<boost::units::unit<typename Dimension::dimension_type, System>>;

}  // namespace cropful::quantities::base
