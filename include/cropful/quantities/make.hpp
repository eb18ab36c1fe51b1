#pragma once

#include "cropful/quantities/vocabulary.hpp"

/// The only ways into and out of the typed world: a number enters or leaves by naming its unit.
/// Constants are exact: NIST Handbook 44 (2023) Appendix C, NIST SP 811 (2008) Appendix B.
namespace cropful::quantities {

inline constexpr double kilograms_per_pound = 0.45359237;  // exact, HB 44 App. C
inline constexpr double kilograms_per_ounce = kilograms_per_pound / 16;
inline constexpr double metres_per_inch = 0.0254;  // exact, HB 44 App. C
inline constexpr double metres_per_foot = 12 * metres_per_inch;
inline constexpr double litres_per_cubic_inch = 2.54 * 2.54 * 2.54 / 1000;
inline constexpr double litres_per_gallon = 3.785411784;            // 231 in3, exact, HB 44 App. C
inline constexpr double litres_per_imperial_gallon = 4.54609;       // exact, UK Weights and Measures Act 1985
inline constexpr double kilocalories_per_megajoule = 1000 / 4.184;  // thermochemical calorie, SP 811 App. B

constexpr Mass kilograms(double x) { return Mass::from_value(x); }
constexpr Duration days(double x) { return Duration::from_value(x); }
constexpr Volume litres(double x) { return Volume::from_value(x); }
constexpr WarmthStep kelvins(double x) { return WarmthStep::from_value(x); }
constexpr Heads birds(double x) { return Heads::from_value(x); }
constexpr Money money(double x) { return Money::from_value(x); }
constexpr Length metres(double x) { return Length::from_value(x); }
constexpr EnergyPerMass kilocalories_per_kilogram(double x) { return EnergyPerMass::from_value(x); }
constexpr MassPerVolume kilograms_per_litre(double x) { return MassPerVolume::from_value(x); }
constexpr MoneyPerMass money_per_kilogram(double x) { return MoneyPerMass::from_value(x); }
constexpr VolumePerMass litres_per_kilogram(double x) { return VolumePerMass::from_value(x); }
constexpr MassPerBirdDay grams_per_bird_day(double x) { return MassPerBirdDay::from_value(x / 1000); }
constexpr PerWarmth per_kelvin(double x) { return PerWarmth::from_value(x); }
constexpr MassFlow kilograms_per_day(double x) { return MassFlow::from_value(x); }
constexpr VolumeFlow litres_per_day(double x) { return VolumeFlow::from_value(x); }
/// Volume of a box of these sides: the one place where lengths become a volume.
constexpr Volume box(Length a, Length b, Length c) { return litres(1000 * a.value() * b.value() * c.value()); }

constexpr double in_kilograms(Mass m) { return m.value(); }
constexpr double in_grams(Mass m) { return m.value() * 1000; }
constexpr double in_pounds(Mass m) { return m.value() / kilograms_per_pound; }
constexpr double in_days(Duration t) { return t.value(); }
constexpr double in_litres(Volume v) { return v.value(); }
constexpr double in_millilitres(Volume v) { return v.value() * 1000; }
constexpr double in_gallons(Volume v) { return v.value() / litres_per_gallon; }
constexpr double in_kelvins(WarmthStep t) { return t.value(); }
constexpr double in_birds(Heads n) { return n.value(); }
constexpr double in_money(Money m) { return m.value(); }
constexpr double in_metres(Length l) { return l.value(); }
constexpr double in_kilocalories_per_kilogram(EnergyPerMass e) { return e.value(); }
constexpr double in_money_per_kilogram(MoneyPerMass p) { return p.value(); }
constexpr double in_kilograms_per_litre(MassPerVolume d) { return d.value(); }
constexpr double in_grams_per_litre(MassPerVolume d) { return d.value() * 1000; }
constexpr double in_milligrams_per_litre(MassPerVolume d) { return d.value() * 1e6; }
constexpr double in_litres_per_kilogram(VolumePerMass r) { return r.value(); }
constexpr double in_kilograms_per_day(MassFlow f) { return f.value(); }
constexpr double in_litres_per_day(VolumeFlow f) { return f.value(); }
constexpr double in_grams_per_bird_day(MassPerBirdDay f) { return f.value() * 1000; }

/// A pure ratio as a number.
constexpr double ratio(boost::units::quantity<boost::units::unit<boost::units::dimensionless_type, base::System>> r) {
    return r.value();
}

}  // namespace cropful::quantities
