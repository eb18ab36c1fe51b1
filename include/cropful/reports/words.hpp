#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "cropful/domain/words.hpp"

/// The parts of a page: tables, paragraphs and lines with two ends. They are marked, not laid out: `set`
/// (reports/setting.hpp) does that when it is known how wide the page is. Other lines of a page stand as they are; one
/// of `page_width` = or - is a rule as wide as the page. Widths count characters of UTF-8.
namespace cropful::reports {

inline constexpr std::size_t page_width = 80;  // where nothing else is known

/// `bar`: cells are numbers of days, drawn as bars to one scale for the whole page where bars are drawn, else left out.
/// Only a last column can be one.
enum class Align { left, right, bar };

/// Rows of cells in columns two spaces apart, without trailing spaces. A last column that is aligned left is broken
/// at spaces to stay on the page; the others are as wide as their widest cell.
class Table {
  public:
    explicit Table(std::vector<Align> columns, std::size_t indent = 0);
    /// What stands above the columns; before any row.
    void head(std::vector<std::string> cells);
    /// Missing cells are empty; cells past the last column are not allowed.
    void add(std::vector<std::string> cells);
    [[nodiscard]] bool empty() const { return rows_.empty(); }
    [[nodiscard]] std::string text() const;
    /// An empty line and the table where bars are drawn; nothing elsewhere.
    [[nodiscard]] std::string picture() const;

  private:
    [[nodiscard]] std::string marked(char kind) const;
    std::vector<Align> columns_;
    std::size_t indent_;
    bool headed_ = false;
    std::vector<std::vector<std::string>> rows_;
};

/// `text` broken at spaces; the first line starts with `first`, the others with `rest`. A word longer than a line is
/// broken too. Ends with a line feed.
std::string wrap(std::string_view text, std::string_view first = "", std::string_view rest = "");

/// `left` and `right` at the two ends of one line, or on two lines when they do not fit.
std::string both_ends(std::string_view left, std::string_view right);

/// Words of a page that warn, red where there is colour; on a page alone, never in JSON, CSV, a calendar or HTML.
std::string alarm(std::string_view words);
/// The same for the capitals that the program's own `words` start with: "SHORT" of "SHORT by 2 %"; others as they are.
std::string alarm_capitals(std::string_view words);

/// In columns; the marks of `alarm` take none.
std::size_t width(std::string_view text);
std::string plural(int count, std::string_view noun);  // "1 bag", "12 bags", "2 boxes"
using domain::join;

}  // namespace cropful::reports
