#include "cropful/reports/setting.hpp"

#include <algorithm>

#include "cropful/reports/words.hpp"
#include "reports/emphasis.hpp"
#include "reports/flow.hpp"
#include "reports/marks.hpp"
#include "reports/table_setting.hpp"

namespace cropful::reports {

namespace {

constexpr std::size_t gap = 2;             // between two ends
constexpr std::size_t shortest_line = 16;  // of a paragraph with a wide margin
constexpr std::string_view warning_margin = "  ! ";

bool is_block(std::string_view line) { return line.size() > 1 && line.front() == marks::block; }
bool is_table(std::string_view line) {
    return is_block(line) && (line[1] == marks::table || line[1] == marks::picture);
}

std::string paragraph(std::string const& first, std::string const& rest, std::string const& text, std::size_t page) {
    std::size_t const margin = std::min(page - shortest_line, std::max(width(first), width(rest)));
    std::string all;
    std::string start = first == warning_margin ? "  " + alarm("!") + " " : first;
    for (std::string const& line : flow(words_of(text), page - margin)) {
        all += without_trailing_spaces(start + line) + "\n";
        start = rest;
    }
    return all;
}

std::string two_ends(std::string const& left, std::string const& right, std::size_t page) {
    std::size_t const taken = width(left) + width(right);
    if (taken + gap > page) return paragraph("", "", left, page) + paragraph("  ", "  ", right, page);
    return without_trailing_spaces(left + std::string(page - taken, ' ') + right) + "\n";
}

bool is_rule(std::string_view line) {
    bool const one_sign = line.find_first_not_of(line.substr(0, 1)) == std::string_view::npos;
    return line.size() == page_width && one_sign && (line[0] == '=' || line[0] == '-');
}

/// A line that is not marked.
std::string plain_line(std::string line, std::size_t page) {
    if (is_rule(line)) return std::string(page, line[0]) + "\n";
    line = harmless(line);
    bool const title = !line.empty() && line.front() != ' ' && line.back() == ':';
    line = title ? as_title(line) : with_heading(line);
    if (width(line) <= page) return line + "\n";
    std::string const margin(std::min(line.find_first_not_of(' '), line.size()), ' ');
    return paragraph(margin, margin + "  ", line, page);
}

std::string set_line(std::string const& line, double longest, Setting const& setting) {
    if (!is_block(line)) return plain_line(line, setting.width);
    std::string_view const fields = std::string_view(line).substr(2);
    if (is_table(line)) {
        Rows const rows = read_rows(fields);
        Rows const drawn = with_bars(rows, longest, setting);
        if (line[1] == marks::table) return set_table(drawn, setting.width);
        return drawn.columns.size() == rows.columns.size() ? "\n" + set_table(drawn, setting.width) : "";
    }
    auto const parts = split(fields, marks::field);
    return line[1] == marks::two_ends ? two_ends(parts.at(0), parts.at(1), setting.width)
                                      : paragraph(parts.at(0), parts.at(1), parts.at(2), setting.width);
}

/// The lines over a double rule.
std::string titles(std::string const& laid) {
    std::string all;
    auto lines = split(plain_text(laid), '\n');
    lines.pop_back();
    for (std::string const& line : lines) all += as_title(line) + "\n";
    return all;
}

}  // namespace

std::string set(std::string_view page, Setting const& setting) {
    if (page.find(marks::block) == std::string_view::npos) return std::string(page);
    auto lines = split(page, '\n');
    std::string const tail = lines.back();  // a last line without an end
    lines.pop_back();
    double longest = 0;
    for (std::string const& line : lines) {
        if (is_table(line)) longest = std::max(longest, longest_bar(read_rows(std::string_view(line).substr(2))));
    }
    std::string all;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        bool const titled = i + 1 < lines.size() && is_rule(lines[i + 1]) && lines[i + 1].front() == '=';
        std::string const laid = set_line(lines[i], longest, setting);
        all += titled ? titles(laid) : laid;
    }
    return setting.colour ? emphasized(all + tail) : plain_text(all + tail);
}

}  // namespace cropful::reports
