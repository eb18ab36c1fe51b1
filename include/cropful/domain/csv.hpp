#pragma once

#include <string>
#include <vector>

/// Comma-separated values as RFC 4180 writes them, in UTF-8.
namespace cropful::domain {

/// One line, ending with CRLF. Cells are kept byte for byte; those with commas, quotes, line ends or blanks at their
/// ends stand in quotes.
std::string csv_line(std::vector<std::string> const& cells);
/// The shortest digits that are read back as the same number, without an exponent.
std::string csv_number(double number);
/// A name as a cell that no spreadsheet takes for a formula: behind an apostrophe where it begins with = + - @, a tab
/// or a line end.
std::string csv_name(std::string const& name);

}  // namespace cropful::domain
