#include "readers/forms.hpp"

#include <cmath>

#include "cropful/fault/characters.hpp"

namespace cropful::readers {

std::string Words::operator()(Value const& value) const {
    auto const* text = value.get<std::string>();
    if (!text) throw value.refuse(expected);
    bool const blank = text->find_first_not_of(" \t") == std::string::npos;
    if (blank) throw BadInput("empty quotes", expected, value.origin());
    value.as([&](Value const&) { need_writable(*text); });
    if (text->size() > longest) throw value.refuse("at most " + std::to_string(longest) + " letters");
    return *text;
}

int WholeNumber::operator()(Value const& value) const {
    auto const* number = value.get<std::int64_t>();
    if (!number || *number < least || *number > most) throw value.refuse(expected);
    return static_cast<int>(*number);
}

double Number::operator()(Value const& value) const {
    std::optional<double> const number = value.number();
    if (number && *number < 0 && least >= 0) {
        throw BadInput(value.found() + ", which is less than 0", expected, value.origin());
    }
    bool const inside = number && std::isfinite(*number) && *number >= least && *number <= most;
    if (!inside) throw value.refuse(expected);
    return *number;
}

std::vector<double> Numbers::operator()(Value const& value) const {
    auto numbers = list_of(Number{0, 1e6, expected})(value);
    if (numbers.size() != count) throw value.refuse(expected);
    return numbers;
}

std::array<double, 3> a_triple(Value const& value) {
    auto const three = Numbers{3}(value);
    bool const rising = three[0] <= three[1] && three[1] <= three[2];
    if (!rising) throw value.refuse("low, central and high in this order");
    return {three[0], three[1], three[2]};
}

std::string Word::operator()(Value const& value) const {
    std::string word = a_text(value);
    if (word != only) throw value.refuse("\"" + only + "\", the only unit read here");
    return word;
}

domain::Moment LocalDate::operator()(Value const& value) const {
    if (auto const* text = value.get<std::string>()) return domain::parse_moment(*text);
    auto const* date = value.get<Date>();
    if (!date) throw value.refuse(expected);
    if (date->zoned) throw value.refuse("a date or a local time without a time zone");
    return domain::parse_moment(date->day) + quantities::days(date->since_midnight);
}

bool has_hour(Value const& value) {
    if (auto const* text = value.get<std::string>()) return domain::says_hour(*text);
    auto const* date = value.get<Date>();
    return date != nullptr && date->timed;
}

bool a_yes_or_no(Value const& value) {
    auto const* yes = value.get<bool>();
    if (!yes) throw value.refuse("true or false, without quotes");
    return *yes;
}

}  // namespace cropful::readers
