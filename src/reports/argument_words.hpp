#pragma once

#include <string>
#include <string_view>

#include "cropful/domain/argument.hpp"
#include "cropful/quantities/text.hpp"

namespace cropful::reports {

/// A template with its fields filled by the arguments of those names, in the farm's measures. What stands in < > is
/// left out where one of its fields has no argument; any other field must have one. Behind a colon stands how a field
/// is printed, where that is not as usual:
///
///     {n:2}        a number, or a share in per cent, to so many decimals; as usual up to 4 significant digits
///     {n:point}    a number of things: "1 point", "2 points"
///     {day:year}   a day with its year
///     {mass:g}, {strength:g/L}, {strength:mg/L}   the number alone; a strength as usual is a bulk density
///     {content:amount}  how much without of what
///     {portions:in each}   "April about 7 kg in each; May about 8 kg in each"
///     {fall:degree}    the degree a response is counted in: "degree F"
std::string worded(std::string_view text, domain::Arguments const& with, quantities::Measures measures);

}  // namespace cropful::reports
