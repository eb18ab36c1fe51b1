#include "reports/emphasis.hpp"

#include <algorithm>
#include <cctype>

#include "cropful/fault/text.hpp"
#include "reports/marks.hpp"

namespace cropful::reports {

namespace {

// Attributes of ECMA-48: bold; bold and red, which is read on a dark and on a light ground.
constexpr std::string_view bold = "\x1b[1m";
constexpr std::string_view warning = "\x1b[1;31m";
constexpr std::string_view normal = "\x1b[0m";

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

/// Marks what stands from the margin to `end`.
std::string marked(std::string_view line, std::size_t end) {
    std::size_t const margin = std::min(line.find_first_not_of(' '), end);
    return std::string(margin, ' ') + marks::strong + std::string(line.substr(margin, end - margin)) + marks::end +
           std::string(line.substr(end));
}

}  // namespace

std::string harmless(std::string_view words) {
    std::string done;
    while (!words.empty()) {
        auto const look =
            static_cast<std::size_t>(std::find_if(words.begin(), words.end(), marks::is_look) - words.begin());
        done += escaped(words.substr(0, look)) + std::string(words.substr(look, 1));
        words.remove_prefix(std::min(look + 1, words.size()));
    }
    return done;
}

std::string with_heading(std::string_view line) {
    std::size_t const end = heading_end(line);
    return end > 0 ? marked(line, end) : std::string(line);
}

std::string as_title(std::string_view line) { return marked(line, line.size()); }

std::string emphasized(std::string_view page) {
    std::string all;
    std::string_view look;  // of the words here; it ends at the end of a line and begins anew with the next
    bool pending = false;
    for (char const c : page) {
        if (c == '\n' && !look.empty() && !pending) all += normal;
        if (c == '\n') pending = !look.empty();
        if (marks::is_look(c)) {
            if (c == marks::end && !pending) all += normal;
            look = c == marks::alarm ? warning : c == marks::strong ? bold : std::string_view();
            pending = c != marks::end;
            continue;
        }
        if (pending && c != ' ' && c != '\n') {
            all += look;
            pending = false;
        }
        all += c;
    }
    return all;
}

std::string plain_text(std::string_view page) {
    std::string all(page);
    std::erase_if(all, marks::is_look);
    return all;
}

}  // namespace cropful::reports
