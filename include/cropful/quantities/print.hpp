#pragma once

#include <string>

#include "cropful/quantities/text.hpp"

/// Quantities as words, in the units on the bag: lb and oz, gal, qt and fl oz, tsp (us); kg and g, L and mL (metric
/// and uk). Rounded for reading only; the engine never rounds. Text is plain ASCII and the same in every locale.
namespace cropful::quantities {

std::string print(Mass mass, Measures measures);      // "583 lb", "15.2 lb", "6.4 oz" / "264 kg", "6.9 kg", "180 g"
std::string print(Volume volume, Measures measures);  // "1.2 gal", "2.4 qt", "5 fl oz" / "4.5 L", "150 mL"
std::string print_bulk(Volume volume, Measures measures);       // of what is sold by the bag: "8 ft3" / "226 L"
std::string print(Duration duration);                           // "20 d 15 h", "9 h"; exact weeks as "6 wk"
std::string print_age(Duration age);                            // "day 12"; exact weeks from 2 on as "6 wk"
std::string print(Temperature temperature, Measures measures);  // "70 F" / "21 C"
std::string print_spoons(Volume volume, Measures measures);     // "1 1/4 tsp", "2 tbsp 1/2 tsp", "1 cup 3 tbsp" / "6.2
                                                                // mL"; to 1/8 tsp, from a cup up to 1 tbsp
std::string print_small(Mass mass, Measures measures);          // product by weight: "3.0 g", "4.1 oz (116 g)"
std::string print(Money money, std::string const& currency);    // "330.00 USD"
std::string percent(double fraction);                           // 0.245 -> "24.5 %", 0.24 -> "24 %"
std::string number(double x, int decimals);                     // fixed decimals, thousands with commas
std::string plain(double x);                                    // up to 4 significant digits, no trailing zeros

}  // namespace cropful::quantities
