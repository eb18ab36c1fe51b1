#pragma once

#include <string>

namespace cropful::commands {

/// What becomes of a file that is already there.
enum class Existing { kept, replaced };

/// Writes `text` to a file: all of it or nothing. Throws WrongUse, also where a file that is to be kept is there; the
/// fault then names the `cure`.
void write_new_file(std::string const& file, std::string const& text, Existing existing = Existing::kept,
                    std::string const& cure = "choose another name");

}  // namespace cropful::commands
