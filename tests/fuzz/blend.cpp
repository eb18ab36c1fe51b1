// A file of blends, to each answer.
#include <filesystem>
#include <fstream>

#include "cropful/commands/command_line.hpp"
#include "fuzz.hpp"

using namespace cropful;

void try_input(std::string_view text) {
    static std::string const file = (std::filesystem::temp_directory_path() / "cropful-fuzz-blend.toml").string();
    std::ofstream(file, std::ios::binary) << text;
    hold_harmless(commands::answer({"blend", file, "--color", "never"}).out);
}
