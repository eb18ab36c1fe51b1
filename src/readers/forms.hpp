#pragma once

#include <array>
#include <string>
#include <string_view>

#include "cropful/domain/moment.hpp"
#include "readers/table.hpp"

/// What a value must look like: each form reads a Value and knows the words for what it expects.
///
///     feed.need("protein", a_percentage)      feed.maybe("bag", more_than_none(a_mass))
namespace cropful::readers {

/// Words on one line: not empty, no control characters.
struct Words {
    std::size_t longest;  // bytes
    char const* expected = "words in quotes";
    std::string operator()(Value const& value) const;
};
inline constexpr Words a_text{200};
inline constexpr Words a_passage{4000};

/// A quantity in quotes.
template <class T>
struct Quoted {
    T (*parse)(std::string_view, quantities::Measures);
    char const* expected;
    T operator()(Value const& value) const { return parse(Words{60, expected}(value), value.measures()); }
};

inline constexpr Quoted<quantities::Mass> a_mass{quantities::parse_mass, "a weight in quotes, such as \"50 lb\""};
inline constexpr Quoted<quantities::Duration> a_time{quantities::parse_duration, "a time in quotes, such as \"6 wk\""};
inline constexpr Quoted<quantities::Volume> a_volume{quantities::parse_volume,
                                                     "a volume in quotes, such as \"3 gal\" or \"12 L\""};
inline constexpr Quoted<quantities::Length> a_length{quantities::parse_length, "a length in quotes, such as \"10 in\""};
inline constexpr Quoted<quantities::Temperature> a_temperature{quantities::parse_temperature,
                                                               "a temperature in quotes, such as \"70 degF\""};
inline constexpr Quoted<quantities::EnergyPerMass> an_energy{quantities::parse_energy,
                                                             "an energy in quotes, such as \"2900 kcal/kg\""};
inline constexpr Quoted<quantities::MassPerVolume> a_density{
    quantities::parse_density, "a weight per volume in quotes, such as \"38 lb/ft3\" or \"5 g per tsp\""};
inline constexpr Quoted<double> a_percentage{quantities::parse_percent, "a percentage in quotes, such as \"24 %\""};
inline constexpr Quoted<quantities::Rate> a_rate{quantities::parse_rate,
                                                 "a label's rate in quotes, such as \"1 tsp per gal\""};
inline constexpr Quoted<quantities::Rate> a_strength{quantities::parse_rate,
                                                     "a strength in quotes, such as \"4 oz per gal\""};
inline constexpr Quoted<quantities::Proportioner> a_proportion{
    [](std::string_view text, quantities::Measures) { return quantities::parse_proportioner(text); },
    "a proportion in quotes, such as \"1:128\""};

/// A form whose amount must be more than none.
template <class T>
struct MoreThanNone {
    Quoted<T> form;
    char const* expected = form.expected;
    T operator()(Value const& value) const {
        T const amount = form(value);
        if (!(amount > T{})) throw value.refuse("more than none");
        return amount;
    }
};
template <class T>
MoreThanNone<T> more_than_none(Quoted<T> form) {
    return {form};
}

/// Any form with words for what it expects.
template <class Form>
struct Described {
    Form form;
    char const* expected;
    auto operator()(Value const& value) const { return std::invoke(form, value); }
};
template <class Form>
Described<Form> described(Form form, char const* expected) {
    return {form, expected};
}

/// A share of less than 100 %.
inline double a_part(Value const& value) {
    double const share = a_percentage(value);
    if (share >= 1) throw value.refuse("less than 100 %");
    return share;
}

/// A whole number between two bounds, both allowed.
struct WholeNumber {
    int least;
    int most;
    std::string expected = "a whole number from " + std::to_string(least) + " to " + std::to_string(most);
    int operator()(Value const& value) const;
};

/// A finite number between two bounds, both allowed.
struct Number {
    double least;
    double most;
    std::string expected;
    double operator()(Value const& value) const;
};

/// A fixed count of numbers, none below 0, such as the rows of a cited table.
struct Numbers {
    std::size_t count;
    std::string expected = "a list of " + std::to_string(count) + " numbers, none below 0";
    std::vector<double> operator()(Value const& value) const;
};

/// Low, central and high, in this order of size.
std::array<double, 3> a_triple(Value const& value);

/// The one unit a table may be in: a text that must be there word for word.
struct Word {
    std::string only;
    std::string operator()(Value const& value) const;
};

inline double a_price(Value const& value) { return Number{0, 1e6, "a number without quotes, such as 27.50"}(value); }

/// A local date, a local date and time, or either in quotes.
struct LocalDate {
    char const* expected = "a date such as 2027-04-05";
    domain::Moment operator()(Value const& value) const;
};
inline constexpr LocalDate a_date{};
/// Whether a time stands beside the day.
bool has_hour(Value const& value);

/// true or false.
bool a_yes_or_no(Value const& value);

/// The most items of a list in a file.
inline constexpr std::size_t longest_list = 200;

/// A list, each item of one form.
template <class Form>
struct ListOf {
    Form form;
    std::string expected = "a list";
    auto operator()(Value const& value) const {
        std::vector<std::decay_t<std::invoke_result_t<Form const&, Value const&>>> all;
        auto const items = value.items(expected);
        if (items.size() > longest_list) throw too_many(items.size(), longest_list, "items in a list", value.origin());
        for (Value const& item : items) all.push_back(item.as(form));
        return all;
    }
};
template <class Form>
ListOf<Form> list_of(Form form) {
    return {form};
}

/// Like `list_of`, each item a table, which must be used up: `read` gets a `Table&`.
template <class Read>
auto tables_of(Read read, std::string const& expected) {
    auto const one = [read, expected](Value const& value) {
        Table table = value.table(expected);
        auto result = read(table);
        table.done();
        return result;
    };
    return ListOf<decltype(one)>{one, "a list of tables such as " + expected};
}

}  // namespace cropful::readers
