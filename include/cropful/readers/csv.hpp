#pragma once

#include <string>
#include <string_view>
#include <vector>

/// Comma-separated values as RFC 4180 has them, in UTF-8; written by domain/csv.hpp. Cells are kept byte for byte.
namespace cropful::readers {

struct CsvRow {
    std::size_t line = 0;  // of the file, from 1, where the row starts
    std::vector<std::string> cells;
};

/// The rows of a file, its heading first. Lines end with CRLF or LF; a byte-order mark and empty lines are passed over.
/// Throws BadInput with file and line for quotes that do not pair, rows of different lengths and text that is no UTF-8.
std::vector<CsvRow> parse_csv(std::string_view text, std::string const& file);

}  // namespace cropful::readers
