#include "readers/likely_cure.hpp"

#include <algorithm>

namespace cropful::readers {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Takes all that is of one sort off the front; how much that was.
template <class Is>
std::size_t take(std::string_view& text, Is is) {
    auto const end = std::find_if_not(text.begin(), text.end(), is);
    auto const length = static_cast<std::size_t>(end - text.begin());
    text.remove_prefix(length);
    return length;
}

bool take_date_mark(std::string_view& text) {
    bool const is_mark = !text.empty() && (text[0] == '-' || text[0] == '/' || text[0] == '.');
    if (is_mark) text.remove_prefix(1);
    return is_mark;
}

/// 5/4/2027, 05.04.27 or 2027-4-5, whether there is such a day or not.
bool is_date(std::string_view value) {
    std::size_t const first = take(value, is_digit);
    if (!take_date_mark(value)) return false;
    std::size_t const second = take(value, is_digit);
    if (second < 1 || second > 2 || !take_date_mark(value)) return false;
    std::size_t const third = take(value, is_digit);
    return first == 4 ? third >= 1 : (first == 1 || first == 2) && third >= 2;
}

bool is_decimal_comma(std::string_view value) {
    return take(value, is_digit) > 0 && value.size() > 1 && value[0] == ',' && is_digit(value[1]);
}

bool any_value(std::string_view line, bool (*is)(std::string_view)) {
    for (std::size_t at = line.find('='); at != std::string_view::npos; at = line.find('=', at + 1)) {
        std::string_view value = line.substr(at + 1);
        take(value, [](char c) { return c == ' ' || c == '\t'; });
        if (is(value)) return true;
    }
    return false;
}

}  // namespace

std::string likely_cure(std::string_view line) {
    if (any_value(line, is_date)) return "a date that exists, as year-month-day, such as 2027-04-05";
    if (any_value(line, is_decimal_comma)) return "a decimal point, as in 27.50";
    if (line.find("\xE2\x80\x9C") != std::string_view::npos || line.find("\xE2\x80\x9D") != std::string_view::npos) {
        return "straight quotes, as in \"50 lb\"";
    }
    if (std::count(line.begin(), line.end(), '"') % 2 == 1) return "a closing quote, as in \"50 lb\"";
    return "";
}

}  // namespace cropful::readers
