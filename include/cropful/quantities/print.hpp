#pragma once

#include <optional>
#include <string>

#include "cropful/quantities/text.hpp"

/// Quantities as words, in the units on the bag: lb and oz, gal, qt and fl oz, tsp (us); kg and g, L and mL (metric
/// and uk). Rounded for reading only; the engine never rounds. Text is plain ASCII and the same in every locale.
namespace cropful::quantities {

std::string print(Mass mass, Measures measures);      // "583 lb", "15.2 lb", "6.4 oz" / "264 kg", "6.9 kg", "180 g"
std::string print(Volume volume, Measures measures);  // "1.2 gal", "2.4 qt", "5 fl oz" / "4.5 L", "150 mL"
std::string print(Duration duration);                 // "20 d 15 h", "9 h"; exact weeks as "6 wk"
std::string print_age(Duration age);                  // "day 12"; exact weeks from 2 on as "6 wk"
std::string print(Temperature temperature, Measures measures);  // "70 F" / "21 C"
std::string print(Money money, std::string const& currency);    // "330.00 USD"
std::string print(Heads heads);                                 // whole birds: "231", "1,200"
std::string percent(double fraction);                           // 0.245 -> "24.5 %", 0.24 -> "24 %"
std::string number(double x, int decimals);                     // fixed decimals, thousands with commas
std::string plain(double x);                                    // up to 4 significant digits, no trailing zeros

std::string print(Proportioner const& proportioner);  // "1 part of stock in 128 in all", "... added to 128 of water"

/// Feed to be weighed and water to be poured, always within 0.4 % of the amount: so of a dose and its water, both
/// rounded, the rate is still kept to 1 %.
std::string print_measured(Mass mass, Measures measures);      // "5.3 lb", "6.4 oz" / "1.25 kg", "180 g", "40 mg"
std::string print_measured(Volume volume, Measures measures);  // "2.37 gal", "1.3 qt", "3.1 fl oz" / "1.25 L", "92 mL"
std::string print_bulk(Volume volume, Measures measures);      // what is sold by the bag: "8 ft3" / "226 L"
/// Product to be stirred in, as exact: "3 g", "4.1 oz (116 g)" / "10.5 g", "1.25 kg".
std::string print_dose(Mass mass, Measures measures);
/// The same by measure, in the spoons that lie in the drawer up to half a cup (us): "1 1/4 tsp (6.16 mL)" within 0.5 %
/// of a multiple of 1/8 tsp, else "6.4 mL, just over 1 1/4 tsp"; "0.25 mL" where no spoon comes within 12.5 %.
std::string print_dose(Volume volume, Measures measures);
/// Whether print_dose (us) names a spoon or more; a smaller product can only be weighed or drawn up.
bool spoon_measures(Volume volume);
/// "1 tbsp 2 1/2 tsp", where that is a volume within 0.5 %; else nothing.
std::optional<std::string> in_spoons(Volume volume);
/// The fewest decimals that show x within 0.4 %, from 0 to 12.
int measured_decimals(double x);
std::string print_measured(double x);  // with those

}  // namespace cropful::quantities
