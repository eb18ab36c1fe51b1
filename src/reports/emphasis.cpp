#include "reports/emphasis.hpp"

#include <array>
#include <cctype>
#include <string_view>

#include "reports/table_setting.hpp"

namespace cropful::reports {

namespace {

// Attributes of ECMA-48: bold; bold and red, which is read on a dark and on a light ground.
constexpr std::string_view bold = "\x1b[1m";
constexpr std::string_view warning = "\x1b[1;31m";
constexpr std::string_view plain = "\x1b[0m";

constexpr std::array<std::string_view, 10> alarming{"NOT KEPT TO",
                                                   "NO MIX OF THESE KEEPS EVERY LIMIT",
                                                   "SOMEBODY MUST COME",
                                                   "NOT POSSIBLE",
                                                   "LOOK NOW",
                                                   "SHORT",
                                                   "OVER",
                                                   "ALARM",
                                                   "NO ",
                                                   "! "};

bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

/// Whether a word stands at `at` for itself: "SHORT by", not "SHORTHORN".
bool stands_at(std::string_view line, std::size_t at, std::string_view word) {
    if (line.substr(at, word.size()) != word) return false;
    bool const starts = at == 0 || line[at - 1] == ' ';
    std::size_t const end = at + word.size();
    return starts && (end >= line.size() || !is_letter(line[end]) || !is_letter(word.back()));
}

/// Bytes of the warning at `at`; 0 where there is none. "NO" and "!" warn only where a line starts.
std::size_t warning_at(std::string_view line, std::size_t at) {
    bool const first = line.substr(0, at).find_first_not_of(' ') == std::string_view::npos;
    for (std::string_view const word : alarming) {
        bool const anywhere = word.back() != ' ';
        if ((anywhere || first) && stands_at(line, at, word)) return word.size() - (anywhere ? 0 : 1);
    }
    return 0;
}

/// Bytes of the capitals a heading starts with, past at most two spaces of margin; 0 for other lines.
std::size_t heading_end(std::string_view line) {
    std::size_t const start = line.find_first_not_of(' ');
    if (start == std::string_view::npos || start > 2) return 0;
    std::size_t end = start;
    for (std::size_t i = start; i <= line.size(); ++i) {
        bool const ends = i == line.size() || line[i] == ' ' || line[i] == ',' || line[i] == ':';
        if (ends && i - end > 1) end = i;
        if (ends && (i == line.size() || line[i] != ' ')) break;
        bool const capital = std::isupper(static_cast<unsigned char>(line[i])) != 0;
        if (!capital && line[i] != ' ') break;
    }
    return end - start > 1 ? end : 0;
}

std::string in(std::string_view look, std::string_view words) {
    return std::string(look) + std::string(words) + std::string(plain);
}

std::string emphasized_line(std::string_view line) {
    std::string done;
    std::size_t at = 0;
    std::size_t const heading = heading_end(line);
    if (heading > 0 && warning_at(line, line.find_first_not_of(' ')) == 0) {
        std::size_t const margin = line.find_first_not_of(' ');
        done = std::string(margin, ' ') + in(bold, line.substr(margin, heading - margin));
        at = heading;
    }
    while (at < line.size()) {
        std::size_t const alarm = warning_at(line, at);
        done += alarm > 0 ? in(warning, line.substr(at, alarm)) : std::string(1, line[at]);
        at += alarm > 0 ? alarm : 1;
    }
    return done;
}

/// The titles over a double rule, and headings that are a line of their own: "The birds:".
bool is_title(std::string_view line, std::string_view next) {
    bool const over_rule = !next.empty() && next.find_first_not_of('=') == std::string_view::npos;
    return !line.empty() && (over_rule || (line[0] != ' ' && line.back() == ':'));
}

}  // namespace

std::string emphasized(std::string const& page) {
    auto const lines = split(page, '\n');
    std::string all;
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        all += (is_title(lines[i], lines[i + 1]) ? in(bold, lines[i]) : emphasized_line(lines[i])) + "\n";
    }
    return all + lines.back();
}

}  // namespace cropful::reports
