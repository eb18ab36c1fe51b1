#pragma once

#include <string>
#include <string_view>

#include "cropful/domain/words.hpp"

/// Words of all pages.
namespace cropful::reports {

std::string nouns(int count, std::string_view noun);         // "bag", "bags", "boxes"
std::string plural(int count, std::string_view noun);        // "1 bag", "12 bags", "2 boxes"
std::string numbers_words(std::vector<int> const& numbers);  // "1-3, 5"; rising
/// "pens 1-4"; "2 pens" where they have no numbers.
std::string houses_words(std::string const& sort, int houses, std::vector<int> const& numbers);
using domain::join;

}  // namespace cropful::reports
