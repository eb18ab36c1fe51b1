#pragma once

#include <string>
#include <string_view>
#include <vector>

/// Words into lines.
namespace cropful::reports {

/// A word and what parts it from the one before it on its line.
struct Piece {
    std::string gap;
    std::string word;
};

/// The words of a text, one space apart; a per cent sign goes with its number.
std::vector<Piece> words_of(std::string_view text);

/// Lines of at most `most` columns; a word wider than that is broken.
std::vector<std::string> flow(std::vector<Piece> const& pieces, std::size_t most);

std::string without_trailing_spaces(std::string line);

}  // namespace cropful::reports
