#pragma once

#include <string>
#include <string_view>

namespace cropful::readers {

/// What the writer of a line that is no TOML most likely meant; empty where nobody can tell. Goes through the line
/// once, however long it is.
std::string likely_cure(std::string_view line);

}  // namespace cropful::readers
