#pragma once

#include <string>

namespace cropful::commands {

/// Writes `text` to a file that does not exist yet: all of it or nothing. Throws WrongUse.
void write_new_file(std::string const& file, std::string const& text);

}  // namespace cropful::commands
