#pragma once

#include <string>
#include <string_view>

namespace cropful::quantities {

/// What is being read, so that a refusal can quote it and say what was expected.
struct Wanted {
    std::string_view text;  // as written
    std::string expected;   // `a weight with its unit, such as "2.5 lb"`

    /// Throws BadInput; the reason, when there is one, stands in brackets after the quoted text.
    [[noreturn]] void refuse(std::string const& reason = "") const;
};

struct Number {
    double value = 0;       // finite, 0 or more
    std::string_view rest;  // what follows, without blanks at either end
};

/// Without spaces and tabs at either end.
std::string_view trim(std::string_view text);

/// Not std::isdigit: the locale has no say.
constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// A digit or a fraction character stands at the front.
bool number_first(std::string_view text);

/// The number at the front of `text`: "2.5", "1/2", "1 1/2", "½", "1½". Refuses everything else.
Number read_number(std::string_view text, Wanted const& wanted);

}  // namespace cropful::quantities
