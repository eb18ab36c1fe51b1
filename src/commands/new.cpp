#include "cropful/commands/new.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

#include <CLI/CLI.hpp>

#include "cropful/fault.hpp"
#include "cropful/readers/farm.hpp"

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

CLI::App* add_to(CLI::App& program, NewOptions& options) {
    CLI::App* app = program.add_subcommand("new", "write a commented farm file to start from");
    app->add_option("FILE", options.file, "name of the new file, or - to print it")->type_name("");
    app->footer("Example: cropful new farm.toml");
    return app;
}

std::string run(NewOptions const& options) {
    if (!options.file) throw WrongUse("what is the new file to be called? Such as: cropful new farm.toml");
    if (*options.file == "-") return readers::starter_farm();
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(*options.file, ignored))) {
        throw WrongUse(*options.file + ": there is already such a file, and it is left as it is; choose another name");
    }
    write_whole(*options.file, readers::starter_farm());
    return "Wrote " + *options.file + ". Change it to suit your birds, then: cropful plan " + *options.file + "\n";
}

}  // namespace cropful::commands
