#include "cropful/reports/words.hpp"

#include <algorithm>
#include <cassert>
#include <utility>

#include "reports/emphasis.hpp"
#include "reports/marks.hpp"

namespace cropful::reports {

namespace {

char letter(Align align) {
    switch (align) {
        case Align::left:
            return 'l';
        case Align::right:
            return 'r';
        case Align::bar:
            break;
    }
    return 'b';
}

/// Fields, empty ones too.
std::string fields(std::vector<std::string> const& parts) {
    std::string all;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) all += marks::field;
        all += parts[i];
    }
    return all;
}

std::string block(char kind, std::vector<std::string> const& parts) {
    return std::string{marks::block, kind} + fields(parts);
}

}  // namespace

Table::Table(std::vector<Align> columns, std::size_t indent) : columns_(std::move(columns)), indent_(indent) {}

void Table::head(std::vector<std::string> cells) {
    assert(rows_.empty());
    headed_ = true;
    add(std::move(cells));
}

void Table::add(std::vector<std::string> cells) {
    assert(cells.size() <= columns_.size());
    cells.resize(columns_.size());
    rows_.push_back(std::move(cells));
}

std::string Table::marked(char kind) const {
    std::string columns;
    for (Align const align : columns_) columns += letter(align);
    std::string all = block(kind, {std::to_string(indent_), columns, headed_ ? "headed" : ""});
    for (auto const& row : rows_) {
        std::vector<std::string> cells;
        for (std::string const& cell : row) cells.push_back(harmless(cell));
        all += marks::row + fields(cells);
    }
    return all + "\n";
}

std::string Table::text() const { return marked(marks::table); }
std::string Table::picture() const { return marked(marks::picture); }

std::string wrap(std::string_view text, std::string_view first, std::string_view rest) {
    return block(marks::paragraph, {harmless(first), harmless(rest), harmless(text)}) + "\n";
}

std::string both_ends(std::string_view left, std::string_view right) {
    return block(marks::two_ends, {harmless(left), harmless(right)}) + "\n";
}

std::string alarm(std::string_view words) { return marks::alarm + std::string(words) + marks::end; }

std::string alarm_capitals(std::string_view words) {
    std::size_t end = 0;
    while (end < words.size() && words[end] >= 'A' && words[end] <= 'Z') ++end;
    return end < 2 ? std::string(words) : alarm(words.substr(0, end)) + std::string(words.substr(end));
}

std::size_t width(std::string_view text) {
    auto const starts_character = [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U && !marks::is_look(c);
    };
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_character));
}

std::string plural(int count, std::string_view noun) {
    std::string const number = std::to_string(count) + " ";
    if (count == 1) return number + std::string(noun);
    bool const hisses = noun.ends_with("s") || noun.ends_with("x") || noun.ends_with("ch");
    return number + std::string(noun) + (hisses ? "es" : "s");
}

}  // namespace cropful::reports
