#pragma once

#include <optional>
#include <string>
#include <string_view>

/// Bare decimal numbers as text and back: to the digit the same in every locale and in every build of the program.
namespace cropful::quantities {

/// The number that makes up the whole of `text`; empty where it is none, or lies beyond what a double holds.
std::optional<double> read_decimal(std::string_view text);

/// Of the number exactly as it is held, ties to even; never "-0".
std::string fixed(double x, int decimals);
/// The fewest digits that read back as x, with an exponent where that is far from 1: "0.1", "1e+20".
std::string shortest(double x);
/// The same without an exponent.
std::string shortest_fixed(double x);

}  // namespace cropful::quantities
