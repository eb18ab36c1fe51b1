#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cropful::domain {

/// The known word nearest to `word` by edits, or "" when none is within a third of its length (at least 2; 1 for words
/// of up to 3 letters).
std::string nearest(std::string_view word, std::vector<std::string> const& known);

}  // namespace cropful::domain
