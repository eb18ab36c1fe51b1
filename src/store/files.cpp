#include "cropful/store/files.hpp"

#include <array>
#include <filesystem>
#include <fstream>

#include "cropful/fault.hpp"

namespace cropful::store {

std::string read_text(std::string const& path, std::size_t most_megabytes) {
    std::error_code unknown;
    if (std::filesystem::is_directory(path, unknown)) {
        throw WrongUse(path + ": found a directory; expected a file");
    }
    // a pipe of a name may never be written into; those under /dev are the shell's, and are
    if (std::filesystem::is_fifo(path, unknown) && !path.starts_with("/dev/")) {
        throw WrongUse(path + ": found a pipe; expected a file");
    }
    std::ifstream in(path, std::ios::binary);
    if (!in) {
        bool const there = std::filesystem::exists(path, unknown);
        throw WrongUse(path + (there ? ": the file cannot be read" : ": there is no such file"));
    }
    std::size_t const most_bytes = most_megabytes * 1'000'000;
    std::string text;
    std::array<char, 65536> part;
    while (text.size() <= most_bytes && (in.read(part.data(), part.size()) || in.gcount() > 0)) {
        text.append(part.data(), static_cast<std::size_t>(in.gcount()));
    }
    if (in.bad()) throw WrongUse(path + ": the file cannot be read");
    if (text.size() > most_bytes) {
        throw WrongUse(path + ": found more than " + std::to_string(most_megabytes) + " MB; expected a smaller file");
    }
    return text;
}

void need_directory(std::string const& path, std::string const& expected) {
    std::error_code none;
    if (std::filesystem::is_directory(path, none)) return;
    throw WrongUse(path + ": found no such directory; expected " + expected);
}

std::vector<std::string> names_in(std::string const& directory, std::string const& ending) {
    std::vector<std::string> names;
    std::error_code none;
    for (auto const& file : std::filesystem::directory_iterator(directory, none)) {
        if (file.path().extension() == ending) names.push_back(file.path().stem().string());
    }
    return names;
}

bool is_there(std::string const& path) {
    std::error_code none;
    return std::filesystem::exists(path, none);
}

}  // namespace cropful::store
