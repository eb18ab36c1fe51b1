#pragma once

#include <concepts>
#include <cstddef>
#include <optional>
#include <string_view>
#include <variant>
#include <vector>

#include "cropful/reports/styled.hpp"

/// A page as data: what stands on it, one block below the other. `set` (reports/setting.hpp) lays it out when it is
/// known how wide it is.
namespace cropful::reports {

inline constexpr std::size_t page_width = 80;  // columns, where nothing else is known

/// The page's name and the time it is about, at the two ends of a line over a double rule.
struct Title {
    Styled name, time;
};
/// A line across the page.
struct Rule {};
/// An empty line.
struct Blank {};
struct Heading {
    Styled words;
    std::size_t indent = 0;
};
/// Words broken at spaces; the first line starts with `first`, the others with `rest`. A word longer than a line is
/// broken too.
struct Paragraph {
    Styled words, first, rest;
};
/// At the two ends of one line, or on two lines where they do not fit.
struct TwoEnds {
    Styled left, right;
};

enum class Align { left, right };

/// Rows of cells in columns two spaces apart. A last column that is aligned left is broken at spaces to stay on the
/// page; the others are as wide as their widest cell. A row may have a bar, drawn to one scale for the whole page where
/// bars are drawn.
class Table {
  public:
    struct Row {
        std::vector<Styled> cells;  // one for each column
        std::optional<double> bar;  // its length, such as days
    };

    explicit Table(std::vector<Align> columns, std::size_t indent = 0);
    /// What stands above the columns; before any row.
    void head(std::vector<Styled> cells);
    /// Missing cells are empty; cells past the last column are not allowed.
    void add(std::vector<Styled> cells, std::optional<double> bar = std::nullopt);

    [[nodiscard]] bool empty() const { return rows_.empty(); }
    [[nodiscard]] std::vector<Align> const& columns() const { return columns_; }
    [[nodiscard]] std::size_t indent() const { return indent_; }
    /// Whether the first row is the columns' headings.
    [[nodiscard]] bool headed() const { return headed_; }
    [[nodiscard]] std::vector<Row> const& rows() const { return rows_; }

  private:
    std::vector<Align> columns_;
    std::size_t indent_;
    bool headed_ = false;
    std::vector<Row> rows_;
};

/// A table that is there for its bars: an empty line and the table where bars are drawn, nothing elsewhere.
struct Picture {
    Table table;
};

using Block = std::variant<Title, Rule, Blank, Heading, Paragraph, TwoEnds, Table, Picture>;

template <class Kind, class Variant>
inline constexpr bool is_one_of = false;
template <class Kind, class... Kinds>
inline constexpr bool is_one_of<Kind, std::variant<Kinds...>> = (std::same_as<Kind, Kinds> || ...);

class Page {
  public:
    Page() = default;
    template <class Kind>
    requires is_one_of<Kind, Block> Page(Kind block) { blocks_.emplace_back(std::move(block)); }

    [[nodiscard]] std::vector<Block> const& blocks() const { return blocks_; }
    [[nodiscard]] bool empty() const { return blocks_.empty(); }
    Page& operator+=(Page const& more);
    friend Page operator+(Page page, Page const& more) { return page += more; }

  private:
    std::vector<Block> blocks_;
};

/// `words` stand out, and `more` goes on behind them.
Page heading(std::string_view words, Styled const& more = {}, std::size_t indent = 0);
Page wrap(Styled words, Styled first = {}, Styled rest = {});
/// A paragraph behind a "!".
Page warning(Styled words);
Page both_ends(Styled left, Styled right);
/// An empty line and the part; nothing where the part is empty.
Page spaced(Page const& part);
/// The parts that say something, an empty line between them.
Page apart(std::vector<Page> const& parts);

}  // namespace cropful::reports
