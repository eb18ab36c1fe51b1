#include "cropful/domain/csv.hpp"

#include <string_view>

#include "cropful/quantities/decimal.hpp"

namespace cropful::domain {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

bool needs_quotes(std::string const& cell) {
    return cell.find_first_of(",\"\r\n") != std::string::npos || cell.starts_with(' ') || cell.ends_with(' ') ||
           cell.starts_with(byte_order_mark);
}

std::string in_csv(std::string const& cell) {
    if (!needs_quotes(cell)) return cell;
    std::string text = "\"";
    for (char const c : cell) text.append(c == '"' ? 2 : 1, c);
    return text + '"';
}

}  // namespace

std::string csv_line(std::vector<std::string> const& cells) {
    if (cells.size() == 1 && cells.front().empty()) return "\"\"\r\n";  // not an empty line, which is no row
    std::string line;
    for (std::string const& cell : cells) line += (&cell == &cells.front() ? "" : ",") + in_csv(cell);
    return line + "\r\n";
}

std::string csv_number(double number) { return quantities::shortest_fixed(number); }

std::string csv_name(std::string const& name) {
    bool const formula = name.find_first_of("=+-@\t\r\n") == 0;
    return formula ? "'" + name : name;
}

}  // namespace cropful::domain
