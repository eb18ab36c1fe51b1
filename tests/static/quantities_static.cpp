// What the types promise, checked by the compiler; nothing runs.
#include <type_traits>

#include "cropful/quantities/temperature.hpp"

namespace cropful::quantities {

// The constants. NIST HB 44 (2023) App. C: 1 in = 2.54 cm, 1 lb = 0.453 592 37 kg, 1 gal = 231 in3.
constexpr bool near(double a, double b) { return a - b < 1e-15 * b && b - a < 1e-15 * b; }
static_assert(in_kilograms(kilograms(kilograms_per_pound)) == 0.45359237);
static_assert(near(litres_per_cubic_inch, 0.016387064));
static_assert(near(litres_per_gallon, 231 * litres_per_cubic_inch));
static_assert(litres_per_imperial_gallon == 4.54609);
static_assert(near(4184 * kilocalories_per_megajoule, 1e6));
static_assert(near(in_pounds(kilograms(0.45359237)), 1));
static_assert(near(in_gallons(litres(3.785411784)), 1));
static_assert(near(in_litres(box(metres(1), metres(1), metres(1))), 1000));
static_assert(near(in_litres(box(metres(0.3048), metres(0.3048), metres(0.3048))), 28.316846592));  // 1 ft3

// Products and quotients are the named quantities.
static_assert(std::is_same_v<decltype(kilograms(1) / litres(1)), MassPerVolume>);
static_assert(std::is_same_v<decltype(kilograms_per_litre(1) * litres(1)), Mass>);
static_assert(std::is_same_v<decltype(kilocalories_per_kilogram(1) * kilograms(1)), Energy>);
static_assert(std::is_same_v<decltype(litres_per_kilogram(1) * kilograms(1)), Volume>);
static_assert(std::is_same_v<decltype(kilograms(1) / days(1)), MassFlow>);
static_assert(std::is_same_v<decltype(litres(1) / days(1)), VolumeFlow>);
static_assert(std::is_same_v<decltype(grams_per_bird_day(1) * birds(1)), MassFlow>);
static_assert(std::is_same_v<decltype(grams_per_bird_day(1) * birds(1) * days(1)), Mass>);
static_assert(std::is_same_v<decltype(grams_per_bird_day(1) * litres_per_kilogram(1)), VolumePerBirdDay>);

// Arithmetic at compile time, a number in and a number out by its unit.
static_assert(in_grams(grams_per_bird_day(20) * birds(100) * days(7)) == 14000);
static_assert(in_kilograms_per_day(grams_per_bird_day(10) * birds(500)) == 5);
static_assert(in_litres(litres_per_kilogram(2) * kilograms(3)) == 6);
static_assert(ratio(kilograms(3) / kilograms(4)) == 0.75);
static_assert(ratio(per_kelvin(0.02) * kelvins(5)) == 0.1);
static_assert(in_days(kilograms(6) / kilograms_per_day(2)) == 3);
static_assert(in_milligrams_per_litre(kilograms_per_litre(0.5)) == 500000);
static_assert(kilograms(1) < kilograms(2));

// No number becomes a quantity unnamed, and no dimension passes for another.
static_assert(!std::is_convertible_v<double, Mass>);
static_assert(!std::is_convertible_v<Mass, double>);
static_assert(!std::is_convertible_v<Mass, Volume>);
static_assert(!std::is_convertible_v<MassPerBirdDay, MassFlow>);
static_assert(!std::is_convertible_v<Heads, double>);
static_assert(!std::is_convertible_v<Money, Mass>);

template <class Left, class Right>
concept adds = requires(Left left, Right right) {
    left + right;
};
template <class Left, class Right>
concept scales = requires(Left left, Right right) {
    left* right;
};
static_assert(adds<Mass, Mass>);

// Temperatures are points: they differ and compare, they neither add up nor scale.
static_assert(in_kelvins(Temperature::celsius(35) - Temperature::celsius(21)) == 14);
static_assert(Temperature::fahrenheit(32).in_celsius() == 0);
static_assert(Temperature::fahrenheit(-40) == Temperature::celsius(-40));
static_assert(Temperature::celsius(100).in_fahrenheit() == 212);
static_assert(Temperature::celsius(20) < Temperature::fahrenheit(70));
static_assert(!adds<Temperature, Temperature>);
static_assert(!scales<double, Temperature>);
static_assert(!std::is_convertible_v<double, Temperature>);
static_assert(!std::is_convertible_v<WarmthStep, Temperature>);

}  // namespace cropful::quantities
