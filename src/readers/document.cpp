#include "readers/document.hpp"

#include <algorithm>
#include <array>
#include <cstdio>
#include <sstream>
#include <string_view>
#include <utility>

// toml++ 3.3 asserts that a table header begins with a key, or lets the optimizer assume it, so that "[.]" would end
// the program. With its assertions off, it goes on to report the fault.
#undef NDEBUG
#define TOML_ASSERT(condition) static_assert(true)
// As TOML 1.1 has it, a time may leave out its seconds: 2027-04-05T14:30.
#define TOML_ENABLE_UNRELEASED_FEATURES 1
#include <toml++/toml.h>

#include "cropful/fault.hpp"
#include "readers/depth.hpp"
#include "readers/likely_cure.hpp"

namespace cropful::readers {

namespace {

constexpr std::size_t deepest = 50;  // the library and what reads its tables call themselves once for each level

Node convert(toml::node const& node);

double fraction_of_day(toml::time const& time) {
    return (time.hour * 3600.0 + time.minute * 60.0 + time.second) / 86400;
}

std::string words(toml::date const& date) {
    char text[32];
    std::snprintf(text, sizeof text, "%04d-%02d-%02d", int{date.year}, int{date.month}, int{date.day});
    return text;
}

std::string words(toml::time const& time) {
    char text[32];
    std::snprintf(text, sizeof text, "%02d:%02d:%02d", int{time.hour}, int{time.minute}, int{time.second});
    return text;
}

List convert_list(toml::array const& array) {
    List list;
    for (auto const& item : array) list.push_back(convert(item));
    return list;
}

/// The library hands keys out in alphabetical order; the lines and columns restore the order of the file.
Entries convert_table(toml::table const& table) {
    std::vector<std::pair<toml::source_position, Entry>> placed;
    for (auto const& [key, value] : table) {
        toml::source_position const at = key.source().begin;
        placed.emplace_back(at, Entry{std::string(key.str()), at.line, convert(value)});
    }
    std::stable_sort(placed.begin(), placed.end(), [](auto const& a, auto const& b) {
        return std::pair(a.first.line, a.first.column) < std::pair(b.first.line, b.first.column);
    });
    Entries entries;
    for (auto& [at, entry] : placed) entries.push_back(std::move(entry));
    return entries;
}

Date convert_date_time(toml::date_time const& value) {
    return {words(value.date), fraction_of_day(value.time), value.offset.has_value(), true};
}

Node convert(toml::node const& node) {
    std::size_t const line = node.source().begin.line;
    switch (node.type()) {
        case toml::node_type::string:
            return {node.as_string()->get(), line};
        case toml::node_type::integer:
            return {node.as_integer()->get(), line};
        case toml::node_type::floating_point:
            return {node.as_floating_point()->get(), line};
        case toml::node_type::boolean:
            return {node.as_boolean()->get(), line};
        case toml::node_type::date:
            return {Date{words(node.as_date()->get()), 0, false, false}, line};
        case toml::node_type::time:
            return {Date{words(node.as_time()->get()), 0, false, true}, line};
        case toml::node_type::date_time:
            return {convert_date_time(node.as_date_time()->get()), line};
        case toml::node_type::array:
            return {convert_list(*node.as_array()), line};
        default:
            return {convert_table(*node.as_table()), line};
    }
}

void refuse_depth(std::string_view text, std::string const& file) {
    if (auto const line = too_deep(text, deepest)) {
        throw BadInput("tables, lists and dotted keys more than 50 deep in one another", "fewer levels",
                       {file, *line, ""});
    }
}

/// The library's account of a fault, fit for one line of a terminal.
std::string account(toml::parse_error const& error) {
    std::string text(error.description());
    constexpr std::string_view opening = "Error while parsing ";
    if (text.starts_with(opening)) text.erase(0, opening.size());
    std::replace_if(
        text.begin(), text.end(), [](unsigned char c) { return c < 0x20 || c > 0x7e; }, '?');
    return text;
}

std::string line_of(std::string_view text, std::size_t number) {
    std::istringstream lines{std::string(text)};
    std::string line;
    for (std::size_t i = 0; i < number && std::getline(lines, line);) ++i;
    return line;
}

BadInput not_toml(toml::parse_error const& error, std::string_view text, std::string const& file) {
    std::size_t const line = error.source().begin.line;
    std::string const cure = likely_cure(line_of(text, line));
    return {"something that is not TOML (" + account(error) + ")",
            cure.empty() ? "[tables], and lines such as key = \"value\", each key once" : cure,
            {file, line, ""}};
}

}  // namespace

Document parse_document(std::string const& text, std::string const& file) {
    refuse_depth(text, file);
    try {
        toml::table const table = toml::parse(std::string_view(text));
        return {file, {convert_table(table), 0}};
    } catch (toml::parse_error const& error) {
        throw not_toml(error, text, file);
    }
}

}  // namespace cropful::readers
