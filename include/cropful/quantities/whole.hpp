#pragma once

#include <cmath>
#include <concepts>
#include <limits>

#include "cropful/fault.hpp"

namespace cropful::quantities {

/// A number as a whole one, cut off behind the point: the only way from `double` to an integer. Throws NoAnswer for one
/// that `Whole` does not hold, and for what is no number at all: both come of sizes nobody meant.
template <std::integral Whole = int>
Whole whole_number(double x) {
    double const end = std::ldexp(1, std::numeric_limits<Whole>::digits);  // the first too large; exact
    bool const holds = std::signed_integral<Whole> ? x >= -end && x < end : x > -1 && x < end;
    if (!holds)
        throw NoAnswer("a count of the answer is too large to be written; check the sizes and numbers asked for");
    return static_cast<Whole>(x);
}

}  // namespace cropful::quantities
