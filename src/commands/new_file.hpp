#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace cropful::commands {

/// What becomes of a file that is already there.
enum class Existing { kept, replaced };

/// A file something is worked out from, and what it is called: "the farm file".
struct Input {
    std::filesystem::path path;
    std::string what;
};

struct NewFile {
    std::string name;
    Existing existing = Existing::kept;
    std::string cure = "choose another name";  // said where the name cannot be used
    std::vector<Input> inputs = {};            // never written onto, under whatever name
};

/// Writes `text` to a file: all of it or nothing, also when a signal ends the program meanwhile. It is written under a
/// name of its own in the same folder, is on the disk, and only then gets its name; a file that is replaced keeps its
/// permissions. Throws WrongUse, also where a file that is to be kept is there, where the name is that of an input, and
/// where what would be replaced is no ordinary file: a link, a folder, a pipe or a device.
void write_new_file(NewFile const& file, std::string const& text);

}  // namespace cropful::commands
