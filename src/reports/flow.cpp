#include "reports/flow.hpp"

#include <algorithm>

#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

/// Past the word at `from`.
std::size_t end_of_word(std::string_view text, std::size_t from) {
    std::size_t const end = std::min(text.find(' ', from), text.size());
    bool const per_cent = end > from && text.substr(end).starts_with(" %");
    return per_cent ? std::min(text.find(' ', end + 1), text.size()) : end;
}

/// Bytes of the first part of a word too long for `most` columns: to the last / that fits, else as much as fits.
std::size_t part_of_word(std::string_view word, std::size_t most) {
    std::size_t bytes = most;
    while (width(word.substr(0, bytes + 1)) <= most) ++bytes;
    std::size_t const slash = word.substr(0, bytes).rfind('/');
    return slash == std::string_view::npos ? bytes : slash + 1;
}

}  // namespace

std::vector<Piece> words_of(std::string_view text) {
    std::vector<Piece> pieces;
    for (std::size_t i = 0; i < text.size();) {
        std::size_t const end = end_of_word(text, i);
        if (end > i) pieces.push_back({" ", std::string(text.substr(i, end - i))});
        i = end + 1;
    }
    return pieces;
}

std::vector<std::string> flow(std::vector<Piece> const& pieces, std::size_t most) {
    std::vector<std::string> done(1);
    for (auto const& [gap, whole] : pieces) {
        std::string_view word = whole;
        if (!done.back().empty() && width(done.back()) + width(gap) + width(word) > most) done.emplace_back();
        while (width(word) > most) {
            std::size_t const bytes = part_of_word(word, most);
            done.back() += word.substr(0, bytes);
            done.emplace_back();
            word.remove_prefix(bytes);
        }
        done.back() += (done.back().empty() ? "" : gap) + std::string(word);
    }
    return done;
}

std::string without_trailing_spaces(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line;
}

}  // namespace cropful::reports
