#include "reports/flow.hpp"

#include <algorithm>

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

std::vector<SpacedWord> words_of(Styled const& text) {
    std::vector<SpacedWord> pieces;
    for (std::size_t i = 0; i < text.words().size();) {
        std::size_t const end = end_of_word(text.words(), i);
        if (end > i) pieces.push_back({i > 0 ? text.part(i - 1, 1) : " ", text.part(i, end - i)});
        i = end + 1;
    }
    return pieces;
}

std::vector<Styled> flow(std::vector<SpacedWord> const& pieces, std::size_t most) {
    std::vector<Styled> done(1);
    for (auto const& [gap, whole] : pieces) {
        Styled word = whole;
        if (!done.back().empty() && done.back().width() + gap.width() + word.width() > most) done.emplace_back();
        while (word.width() > most) {
            std::size_t const bytes = part_of_word(word.words(), most);
            done.back() += word.part(0, bytes);
            done.emplace_back();
            word = word.part(bytes);
        }
        if (!done.back().empty()) done.back() += gap;
        done.back() += word;
    }
    return done;
}

Styled without_trailing_spaces(Styled const& line) { return line.part(0, line.words().find_last_not_of(' ') + 1); }

}  // namespace cropful::reports
