#include "cropful/quantities/decimal.hpp"

#include <algorithm>
#include <cmath>

#include <fast_float/fast_float.h>
#include <fmt/format.h>

namespace cropful::quantities {

std::optional<double> read_decimal(std::string_view text) {
    double value = 0;
    char const* const end = text.data() + text.size();
    auto const result = fast_float::from_chars(text.data(), end, value);
    if (result.ec != std::errc() || result.ptr != end || !std::isfinite(value)) return std::nullopt;
    bool const vanished =
        value == 0 && text.substr(0, text.find_first_of("eE")).find_first_of("123456789") != text.npos;
    return vanished ? std::nullopt : std::optional(value);
}

std::string fixed(double x, int decimals) {
    std::string text = fmt::format("{:.{}f}", x, decimals);
    if (text.starts_with('-') && text.find_first_not_of("-0.") == std::string::npos) text.erase(0, 1);
    return text;
}

std::string shortest(double x) { return fmt::format("{}", x); }

std::string shortest_fixed(double x) {
    std::string text = shortest(x);
    std::size_t const e = text.find('e');
    if (e == std::string::npos) return text;
    int const exponent = std::stoi(text.substr(e + 1));
    std::size_t const point = std::min(text.find('.'), e);
    int const behind = static_cast<int>(e - std::min(point + 1, e));  // digits behind the point
    return fixed(x, std::max(0, behind - exponent));
}

}  // namespace cropful::quantities
