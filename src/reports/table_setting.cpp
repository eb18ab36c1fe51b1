#include "reports/table_setting.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "cropful/quantities/whole.hpp"
#include "reports/flow.hpp"
#include "reports/marks.hpp"

namespace cropful::reports {

namespace {

constexpr std::size_t gap = 2;           // columns between two cells
constexpr std::size_t narrowest = 16;    // a last column is never broken to less than this
constexpr std::size_t shortest_bar = 6;  // columns for the longest bar; with less there are none
constexpr std::size_t longest_room = 20;

std::vector<std::size_t> widths(Rows const& rows) {
    std::vector<std::size_t> wide(rows.columns.size(), 0);
    for (auto const& row : rows.cells) {
        for (std::size_t c = 0; c < row.size(); ++c) wide[c] = std::max(wide[c], width(row[c]));
    }
    return wide;
}

std::string padded(std::string const& cell, std::size_t wide, Align align) {
    std::string const space(wide - std::min(wide, width(cell)), ' ');
    return align == Align::right ? space + cell : cell + space;
}

/// Columns of all but the last column, with the gaps after them. One that is empty throughout takes no room.
std::size_t columns_before_last(Rows const& rows, std::vector<std::size_t> const& wide) {
    std::size_t taken = rows.indent;
    for (std::size_t c = 0; c + 1 < wide.size(); ++c) taken += wide[c] > 0 ? wide[c] + gap : 0;
    return taken;
}

/// Each cell behind its heading; the lines after a row's first are indented.
std::string written_out(Rows const& rows, std::size_t page) {
    std::string all;
    for (std::size_t r = rows.headed ? 1 : 0; r < rows.cells.size(); ++r) {
        std::vector<Piece> pieces;
        std::size_t const room = page - rows.indent - gap;
        for (std::size_t c = 0; c < rows.columns.size(); ++c) {
            std::string const& cell = rows.cells[r][c];
            std::string const heading = rows.headed && c > 0 ? rows.cells[0][c] + " " : "";
            if (cell.empty()) continue;
            std::string const item = heading == " " ? cell : heading + cell;
            std::vector<Piece> parts = width(item) > room ? words_of(item) : std::vector<Piece>{{"", item}};
            parts.front().gap = std::string(gap, ' ');
            pieces.insert(pieces.end(), parts.begin(), parts.end());
        }
        std::string margin(rows.indent, ' ');
        for (std::string const& line : flow(pieces, room)) {
            all += without_trailing_spaces(margin + line) + "\n";
            margin = std::string(rows.indent + gap, ' ');
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

std::vector<std::string> split(std::string_view text, char mark) {
    std::vector<std::string> parts;
    for (std::size_t end = text.find(mark); end != std::string_view::npos; end = text.find(mark)) {
        parts.emplace_back(text.substr(0, end));
        text.remove_prefix(end + 1);
    }
    parts.emplace_back(text);
    return parts;
}

Rows read_rows(std::string_view fields) {
    auto const parts = split(fields, marks::row);
    auto const about = split(parts.front(), marks::field);
    Rows rows;
    rows.indent = static_cast<std::size_t>(std::atoi(about.at(0).c_str()));
    for (char const c : about.at(1)) {
        rows.columns.push_back(c == 'l' ? Align::left : c == 'r' ? Align::right : Align::bar);
    }
    rows.headed = !about.at(2).empty();
    for (std::size_t i = 1; i < parts.size(); ++i) rows.cells.push_back(split(parts[i], marks::field));
    return rows;
}

double longest_bar(Rows const& rows) {
    double longest = 0;
    if (rows.columns.back() != Align::bar) return longest;
    for (auto const& row : rows.cells) longest = std::max(longest, std::atof(row.back().c_str()));
    return longest;
}

Rows with_bars(Rows rows, double longest, Setting const& setting) {
    if (rows.columns.back() != Align::bar) return rows;
    Rows without = rows;
    without.columns.pop_back();
    for (auto& row : without.cells) row.pop_back();
    auto const wide = widths(without);
    std::size_t const taken = columns_before_last(without, wide) + wide.back() + gap;
    bool const fits = taken + shortest_bar <= setting.width;
    if (setting.bars == Bars::none || !fits || longest <= 0) return without;
    std::size_t const room = std::min(longest_room, setting.width - taken);
    rows.columns.back() = Align::left;
    for (std::size_t r = rows.headed ? 1 : 0; r < rows.cells.size(); ++r) {
        std::string& cell = rows.cells[r].back();
        if (!cell.empty()) cell = drawn(std::atof(cell.c_str()) / longest, room, setting.bars);
    }
    return rows;
}

std::string set_table(Rows const& rows, std::size_t page) {
    auto const wide = widths(rows);
    std::size_t const last = rows.columns.size() - 1;
    bool const breaks = rows.columns[last] == Align::left;
    std::size_t const taken = columns_before_last(rows, wide);
    if (taken + (breaks ? std::min(wide[last], narrowest) : wide[last]) > page) return written_out(rows, page);
    std::string all;
    for (auto const& row : rows.cells) {
        std::string line(rows.indent, ' ');
        for (std::size_t c = 0; c < last; ++c) {
            if (wide[c] > 0) line += padded(row[c], wide[c], rows.columns[c]) + std::string(gap, ' ');
        }
        auto const parts = breaks ? flow(words_of(row[last]), page - taken)
                                  : std::vector<std::string>{padded(row[last], wide[last], Align::right)};
        for (std::string const& part : parts) {
            all += without_trailing_spaces(line + part) + "\n";
            line = std::string(taken, ' ');
        }
    }
    return all;
}

}  // namespace cropful::reports
