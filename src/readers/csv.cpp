#include "cropful/readers/csv.hpp"

#include <algorithm>

#include "cropful/domain/words.hpp"
#include "cropful/fault.hpp"

namespace cropful::readers {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// Goes through the text once.
class Parser {
  public:
    Parser(std::string_view text, std::string const& file) : rest_(text), file_(file) {
        if (rest_.starts_with(byte_order_mark)) rest_.remove_prefix(byte_order_mark.size());
    }

    bool next(CsvRow& row) {
        while (take_line_end()) continue;
        if (rest_.empty()) return false;
        row = {line_, {}};
        do row.cells.push_back(cell());
        while (take(","));
        if (!rest_.empty() && !take_line_end()) throw bare_return();
        return true;
    }

  private:
    bool take(std::string_view what) {
        if (!rest_.starts_with(what)) return false;
        rest_.remove_prefix(what.size());
        return true;
    }

    bool take_line_end() {
        if (!take("\r\n") && !take("\n")) return false;
        ++line_;
        return true;
    }

    std::string cell() { return take("\"") ? quoted() : plain(); }

    std::string plain() {
        std::string const text(rest_.substr(0, rest_.find_first_of(",\r\n")));
        if (text.find('"') != std::string::npos) {
            throw refuse(in_quotes(text), "quotes around the whole cell, and doubled within it");
        }
        rest_.remove_prefix(text.size());
        return text;
    }

    std::string quoted() {
        std::size_t const start = line_;
        std::string text;
        do {
            std::size_t const quote = rest_.find('"');
            if (quote == std::string_view::npos) {
                throw BadInput("a quote that is never closed", "a closing quote", {file_, start, ""});
            }
            text += rest_.substr(0, quote);
            rest_.remove_prefix(quote + 1);
            if (rest_.starts_with('"')) text += '"';
        } while (take("\""));
        line_ += static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
        if (!rest_.empty() && rest_.find_first_of(",\r\n") != 0) {
            throw refuse(in_quotes(rest_.substr(0, rest_.find_first_of(",\r\n"))) + " after a closing quote",
                         "a comma or the end of the line; quotes within a cell are doubled");
        }
        return text;
    }

    [[nodiscard]] BadInput refuse(std::string const& found, std::string const& expected) const {
        return {found, expected, {file_, line_, ""}};
    }

    [[nodiscard]] BadInput bare_return() const {
        return refuse("a carriage return alone", "lines that end with CRLF or LF");
    }

    std::string_view rest_;
    std::string const& file_;
    std::size_t line_ = 1;
};

std::size_t line_at(std::string_view text, std::size_t at) {
    return 1 + static_cast<std::size_t>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

/// Spreadsheets save in other encodings too; read as UTF-8 their letters would be spoilt.
void check_encoding(std::string_view text, std::string const& file) {
    constexpr char cure[] = "text in UTF-8: save it from the spreadsheet as \"CSV UTF-8\"";
    if (text.find('\0') != std::string_view::npos) {
        throw BadInput("a byte of nought", cure, {file, line_at(text, text.find('\0')), ""});
    }
    if (domain::is_utf8(text)) return;
    std::size_t start = 0;
    while (domain::is_utf8(text.substr(start, text.find('\n', start) - start))) start = text.find('\n', start) + 1;
    throw BadInput("letters that are not UTF-8", cure, {file, line_at(text, start), ""});
}

}  // namespace

std::vector<CsvRow> parse_csv(std::string_view text, std::string const& file) {
    check_encoding(text, file);
    Parser parser(text, file);
    std::vector<CsvRow> rows;
    for (CsvRow row; parser.next(row);) {
        if (!rows.empty() && row.cells.size() != rows.front().cells.size()) {
            throw BadInput(std::to_string(row.cells.size()) + " cells",
                           std::to_string(rows.front().cells.size()) + " cells, as in the first line",
                           {file, row.line, ""});
        }
        rows.push_back(row);
    }
    return rows;
}

}  // namespace cropful::readers
