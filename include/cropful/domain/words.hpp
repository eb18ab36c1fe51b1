#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cropful/fault/characters.hpp"

namespace cropful::domain {

/// "a, b, c"; "" for no parts.
std::string join(std::vector<std::string> const& parts, std::string_view between = ", ");
/// ASCII letters in lower case; the rest as it is.
std::string lower(std::string_view text);
using cropful::is_utf8;

}  // namespace cropful::domain
