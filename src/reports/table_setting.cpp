#include "reports/table_setting.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/whole.hpp"
#include "reports/flow.hpp"

namespace cropful::reports {

namespace {

constexpr std::size_t cell_gap = 2;      // columns between two cells
constexpr std::size_t narrowest = 16;    // a last column is never broken to less than this
constexpr std::size_t shortest_bar = 6;  // columns for the longest bar; with less there are none
constexpr std::size_t longest_room = 20;

std::vector<std::size_t> widths(Table const& table) {
    std::vector<std::size_t> wide(table.columns().size(), 0);
    for (Table::Row const& row : table.rows()) {
        for (std::size_t c = 0; c < wide.size(); ++c) wide[c] = std::max(wide[c], row.cells[c].width());
    }
    return wide;
}

Styled padded(Styled const& cell, std::size_t wide, Align align) {
    std::string const space(wide - std::min(wide, cell.width()), ' ');
    return align == Align::right ? space + cell : cell + space;
}

/// Columns of all but the last column, with the gaps after them. One that is empty throughout takes no room.
std::size_t columns_before_last(Table const& table, std::vector<std::size_t> const& wide) {
    std::size_t taken = table.indent();
    for (std::size_t c = 0; c + 1 < wide.size(); ++c) taken += wide[c] > 0 ? wide[c] + cell_gap : 0;
    return taken;
}

/// The cells of a row, each behind its heading; one too wide for the room in words.
std::vector<SpacedWord> cells_in_words(Table const& table, Table::Row const& row, std::size_t room) {
    std::vector<SpacedWord> pieces;
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
        Styled const& cell = row.cells[c];
        if (cell.empty()) continue;
        Styled const heading = table.headed() && c > 0 ? table.rows().front().cells[c] : Styled();
        Styled const item = heading.empty() ? cell : heading + " " + cell;
        std::vector<SpacedWord> parts = item.width() > room ? words_of(item) : std::vector<SpacedWord>{{"", item}};
        parts.front().gap = std::string(cell_gap, ' ');
        pieces.insert(pieces.end(), parts.begin(), parts.end());
    }
    return pieces;
}

/// Row by row; the lines after a row's first are indented.
std::vector<Styled> written_out(Table const& table, std::size_t page) {
    std::vector<Styled> all;
    std::size_t const room = page - table.indent() - cell_gap;
    for (std::size_t r = table.headed() ? 1 : 0; r < table.rows().size(); ++r) {
        std::string margin(table.indent(), ' ');
        for (Styled const& line : flow(cells_in_words(table, table.rows()[r], room), room)) {
            all.push_back(without_trailing_spaces(margin + line));
            margin = std::string(table.indent() + cell_gap, ' ');
        }
    }
    return all;
}

/// `share` of `room`, at least a trace of it.
std::string drawn(double share, std::size_t room, Bars bars) {
    double const steps = share * static_cast<double>(bars == Bars::ascii ? room : 2 * room);
    std::size_t const length = std::max<std::size_t>(1, quantities::whole_number<std::size_t>(std::round(steps)));
    if (bars == Bars::ascii) return std::string(length, '#');
    std::string bar;
    for (std::size_t i = 0; i < length / 2; ++i) bar += "\u2588";
    return length % 2 == 1 ? bar + "\u258c" : bar;
}

}  // namespace

double longest_bar(Table const& table) {
    double longest = 0;
    for (Table::Row const& row : table.rows()) longest = std::max(longest, row.bar.value_or(0));
    return longest;
}

Table with_bars(Table const& table, double longest, Setting const& setting) {
    auto const wide = widths(table);
    std::size_t const taken = columns_before_last(table, wide) + wide.back() + cell_gap;
    bool const fits = taken + shortest_bar <= setting.width;
    if (setting.bars == Bars::none || !fits || longest_bar(table) <= 0) return table;
    std::size_t const room = std::min(longest_room, setting.width - taken);
    auto columns = table.columns();
    columns.push_back(Align::left);
    Table with(columns, table.indent());
    for (Table::Row const& row : table.rows()) {
        auto cells = row.cells;
        if (row.bar) cells.emplace_back(drawn(*row.bar / longest, room, setting.bars));
        if (&row == &table.rows().front() && table.headed()) {
            with.head(std::move(cells));
        } else {
            with.add(std::move(cells));
        }
    }
    return with;
}

std::vector<Styled> set_table(Table const& table, std::size_t page) {
    auto const wide = widths(table);
    std::size_t const last = wide.size() - 1;
    bool const breaks = table.columns()[last] == Align::left;
    std::size_t const taken = columns_before_last(table, wide);
    if (taken + (breaks ? std::min(wide[last], narrowest) : wide[last]) > page) return written_out(table, page);
    std::vector<Styled> all;
    for (auto const& [cells, bar] : table.rows()) {
        Styled line = std::string(table.indent(), ' ');
        for (std::size_t c = 0; c < last; ++c) {
            if (wide[c] > 0) line += padded(cells[c], wide[c], table.columns()[c]) + std::string(cell_gap, ' ');
        }
        auto const parts = breaks ? flow(words_of(cells[last]), page - taken)
                                  : std::vector<Styled>{padded(cells[last], wide[last], Align::right)};
        for (Styled const& part : parts) {
            all.push_back(without_trailing_spaces(line + part));
            line = std::string(taken, ' ');
        }
    }
    return all;
}

}  // namespace cropful::reports
