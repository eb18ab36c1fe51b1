#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cropful::domain {

/// "a, b, c"; "" for no parts.
std::string join(std::vector<std::string> const& parts, std::string_view between = ", ");
/// ASCII letters in lower case; the rest as it is.
std::string lower(std::string_view text);
/// Whether the bytes are characters of UTF-8 (RFC 3629): nothing overlong, no surrogates, at most U+10FFFF.
bool is_utf8(std::string_view text);

}  // namespace cropful::domain
