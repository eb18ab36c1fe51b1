#include "cropful/reports/words.hpp"

#include <algorithm>
#include <cassert>
#include <utility>

namespace cropful::reports {

namespace {

constexpr std::size_t gap = 2;         // columns between two cells
constexpr std::size_t narrowest = 20;  // a last column is never broken to less than this

/// Past the word at `from`; a per cent sign goes with its number.
std::size_t end_of_word(std::string_view text, std::size_t from) {
    std::size_t const end = std::min(text.find(' ', from), text.size());
    bool const per_cent = end > from && text.substr(end).starts_with(" %");
    return per_cent ? std::min(text.find(' ', end + 1), text.size()) : end;
}

/// The lines of a text, none wider than `most` unless a single word is.
std::vector<std::string> lines(std::string_view text, std::size_t most) {
    std::vector<std::string> done(1);
    for (std::size_t i = 0; i < text.size();) {
        std::size_t const end = end_of_word(text, i);
        auto const word = text.substr(i, end - i);
        i = end + 1;
        if (word.empty()) continue;
        std::string& line = done.back();
        if (line.empty()) {
            line = word;
        } else if (width(line) + 1 + width(word) <= most) {
            line.append(" ").append(word);
        } else {
            done.emplace_back(word);
        }
    }
    return done;
}

std::string padded(std::string const& cell, std::size_t wide, Align align) {
    std::string const space(wide - std::min(wide, width(cell)), ' ');
    return align == Align::left ? cell + space : space + cell;
}

std::string without_trailing_spaces(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line;
}

}  // namespace

Table::Table(std::vector<Align> columns, std::size_t indent) : columns_(std::move(columns)), indent_(indent) {}

void Table::add(std::vector<std::string> cells) {
    assert(cells.size() <= columns_.size());
    cells.resize(columns_.size());
    rows_.push_back(std::move(cells));
}

std::vector<std::size_t> Table::widths() const {
    std::vector<std::size_t> wide(columns_.size(), 0);
    for (auto const& row : rows_) {
        for (std::size_t c = 0; c < row.size(); ++c) wide[c] = std::max(wide[c], width(row[c]));
    }
    return wide;
}

std::string Table::text() const {
    auto const wide = widths();
    std::size_t const last = columns_.size() - 1;
    std::string all;
    for (auto const& row : rows_) {
        std::string line(indent_, ' ');
        for (std::size_t c = 0; c < last; ++c) {
            if (wide[c] > 0) line += padded(row[c], wide[c], columns_[c]) + std::string(gap, ' ');
        }
        if (columns_[last] == Align::right) {
            all += without_trailing_spaces(line + padded(row[last], wide[last], Align::right)) + "\n";
            continue;
        }
        std::size_t const taken = width(line);
        std::size_t const room = std::max(narrowest, page_width - std::min(page_width, taken));
        for (std::string const& part : lines(row[last], room)) {
            all += without_trailing_spaces(line + part) + "\n";
            line = std::string(taken, ' ');
        }
    }
    return all;
}

std::string wrap(std::string_view text, std::string_view first, std::string_view rest) {
    std::size_t const margin = std::max(width(first), width(rest));
    std::string all;
    std::string_view start = first;
    for (std::string const& line : lines(text, page_width - std::min(page_width - narrowest, margin))) {
        all += without_trailing_spaces(std::string(start) + line) + "\n";
        start = rest;
    }
    return all;
}

std::string both_ends(std::string_view left, std::string_view right) {
    std::size_t const taken = width(left) + width(right);
    if (taken + gap > page_width) return wrap(left) + wrap(right, "  ", "  ");
    return without_trailing_spaces(std::string(left) + std::string(page_width - taken, ' ') + std::string(right)) +
           "\n";
}

std::size_t width(std::string_view text) {
    auto const starts_character = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; };
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_character));
}

std::string plural(int count, std::string_view noun) {
    std::string const number = std::to_string(count) + " ";
    if (count == 1) return number + std::string(noun);
    bool const hisses = noun.ends_with("s") || noun.ends_with("x") || noun.ends_with("ch");
    return number + std::string(noun) + (hisses ? "es" : "s");
}

}  // namespace cropful::reports
