#include "commands/new_file.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

#include "cropful/fault.hpp"

namespace cropful::commands {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(std::string const& file, std::string const& why) {
    throw WrongUse(file + ": cannot be written: " + why);
}

/// All of `text` under a name of its own first, so that nobody ever sees half of it.
void write_whole(fs::path const& file, std::string const& text) {
    fs::path const part = file.string() + ".part";
    std::ofstream out(part, std::ios::binary | std::ios::trunc);
    if (!out) refuse(file.string(), std::strerror(errno));
    out << text << std::flush;
    bool const written = out.good();
    out.close();
    std::error_code fault;
    if (written) fs::rename(part, file, fault);
    if (written && !fault) return;
    std::error_code ignored;
    fs::remove(part, ignored);
    refuse(file.string(), fault ? fault.message() : "the disk does not take it");
}

}  // namespace

void write_new_file(std::string const& file, std::string const& text, Existing existing, std::string const& cure) {
    std::error_code ignored;
    if (existing == Existing::kept && fs::exists(fs::symlink_status(file, ignored))) {
        throw WrongUse(file + ": there is already such a file, and it is left as it is; " + cure);
    }
    write_whole(file, text);
}

}  // namespace cropful::commands
