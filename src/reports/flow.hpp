#pragma once

#include <vector>

#include "cropful/reports/styled.hpp"

/// Words into lines.
namespace cropful::reports {

/// A word and what parts it from the one before it on its line.
struct SpacedWord {
    Styled gap;
    Styled word;
};

/// The words of a text, one space apart; a per cent sign goes with its number.
std::vector<SpacedWord> words_of(Styled const& text);

/// Lines of at most `most` columns; a word wider than that is broken.
std::vector<Styled> flow(std::vector<SpacedWord> const& pieces, std::size_t most);

Styled without_trailing_spaces(Styled const& line);

}  // namespace cropful::reports
