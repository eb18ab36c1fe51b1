#include "quantities/number.hpp"

#include <array>

#include "cropful/fault.hpp"
#include "cropful/quantities/decimal.hpp"

namespace cropful::quantities {

namespace {

struct Vulgar {
    std::string_view sign;  // UTF-8
    double over;
    double under;
};

constexpr std::array<Vulgar, 9> vulgars{{{"½", 1, 2},
                                         {"¼", 1, 4},
                                         {"¾", 3, 4},
                                         {"⅓", 1, 3},
                                         {"⅔", 2, 3},
                                         {"⅛", 1, 8},
                                         {"⅜", 3, 8},
                                         {"⅝", 5, 8},
                                         {"⅞", 7, 8}}};

// What lies beyond is a slip, and sums of it would leave the numbers a computer holds.
constexpr double smallest = 1e-12;
constexpr double largest = 1e15;

bool digit_first(std::string_view text) { return !text.empty() && is_digit(text.front()); }

std::string_view take_digits(std::string_view& text) {
    std::size_t length = 0;
    while (length < text.size() && is_digit(text[length])) ++length;
    std::string_view const digits = text.substr(0, length);
    text.remove_prefix(length);
    return digits;
}

/// Takes `"." digits` too, when that follows.
std::string_view take_decimal(std::string_view& text) {
    std::string_view const start = text;
    take_digits(text);
    if (text.size() > 1 && text[0] == '.' && is_digit(text[1])) {
        text.remove_prefix(1);
        take_digits(text);
    }
    return start.substr(0, start.size() - text.size());
}

double value_of(std::string_view digits, Wanted const& wanted) {
    auto const value = read_decimal(digits);
    if (!value) wanted.refuse("the number is too large or too small");
    return *value;
}

void refuse_foreign_number(std::string_view rest, Wanted const& wanted) {
    if (rest.empty()) return;
    if (rest[0] == ',') wanted.refuse("write a point for decimals and no mark for thousands: 2.5, 2500");
    if (rest[0] == '.') wanted.refuse("a point stands between two digits, once");
    bool const e = rest[0] == 'e' || rest[0] == 'E';
    if (e && rest.size() > 1 && (is_digit(rest[1]) || rest[1] == '+' || rest[1] == '-')) {
        wanted.refuse("write the number out, without an exponent");
    }
}

/// The fraction character at the front, or nullptr.
Vulgar const* take_vulgar(std::string_view& text) {
    for (Vulgar const& vulgar : vulgars) {
        if (!text.starts_with(vulgar.sign)) continue;
        text.remove_prefix(vulgar.sign.size());
        return &vulgar;
    }
    return nullptr;
}

/// What follows `over "/"`, as a fraction.
double fraction(double over, std::string_view& text, Wanted const& wanted) {
    double const under = value_of(take_digits(text), wanted);
    if (under == 0) wanted.refuse("a fraction over 0");
    return over / under;
}

bool stroke_first(std::string_view text) { return text.size() > 1 && text[0] == '/' && is_digit(text[1]); }

/// The fraction after a whole number, 0 when there is none: "1/2" or "½".
double fraction_after_whole(std::string_view& text, Wanted const& wanted) {
    std::string_view after = trim(text);
    if (Vulgar const* vulgar = take_vulgar(after)) {
        text = after;
        return vulgar->over / vulgar->under;
    }
    if (!digit_first(after)) return 0;
    double const over = value_of(take_digits(after), wanted);
    if (!stroke_first(after)) wanted.refuse("one number, without blanks in it");
    after.remove_prefix(1);
    double const part = fraction(over, after, wanted);
    if (part >= 1) wanted.refuse("the fraction after a whole number is less than 1");
    text = after;
    return part;
}

}  // namespace

void Wanted::refuse(std::string const& reason) const {
    throw BadInput(reason.empty() ? in_quotes(text) : in_quotes(text) + " (" + reason + ")", expected);
}

std::string_view trim(std::string_view text) {
    std::size_t const first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

bool number_first(std::string_view text) { return digit_first(text) || take_vulgar(text) != nullptr; }

Number read_number(std::string_view text, Wanted const& wanted) {
    text = trim(text);
    if (text.starts_with('-')) wanted.refuse("less than 0");
    if (text.starts_with('.')) wanted.refuse("write a digit before the point");
    if (!number_first(text)) wanted.refuse();

    double value = 0;
    if (Vulgar const* vulgar = take_vulgar(text)) {
        value = vulgar->over / vulgar->under;
    } else {
        std::string_view const digits = take_decimal(text);
        bool const whole = digits.find('.') == std::string_view::npos;
        value = value_of(digits, wanted);
        if (whole && stroke_first(text)) {
            text.remove_prefix(1);
            value = fraction(value, text, wanted);
        } else if (whole) {
            value += fraction_after_whole(text, wanted);
        }
    }
    refuse_foreign_number(text, wanted);
    if (value != 0 && !(value >= smallest && value <= largest)) wanted.refuse("the number is too large or too small");
    text = trim(text);
    if (number_first(text)) wanted.refuse("one number, without blanks in it");
    return {value, text};
}

}  // namespace cropful::quantities
