#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace cropful::store {

/// A file's whole text; throws WrongUse when it is missing, a directory, unreadable or larger.
std::string read_text(std::string const& path, std::size_t most_megabytes = 1);

/// Throws WrongUse where there is no such directory; `expected` says what one would be.
void need_directory(std::string const& path, std::string const& expected);
/// Names without it of the files of a directory that end so, such as ".toml"; none where there is no such directory.
std::vector<std::string> names_in(std::string const& directory, std::string const& ending);
bool is_there(std::string const& path);

}  // namespace cropful::store
