#include "cropful/commands/new.hpp"

#include <CLI/CLI.hpp>

#include "commands/new_file.hpp"
#include "cropful/fault.hpp"
#include "cropful/readers/farm.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, NewOptions& options) {
    CLI::App* app = program.add_subcommand("new", "write a commented farm file to start from");
    app->add_option("FILE", options.file, "name of the new file, or - to print it")->type_name("");
    app->footer("Example: cropful new farm.toml");
    return app;
}

std::string run(NewOptions const& options) {
    if (!options.file) throw WrongUse("what is the new file to be called? Such as: cropful new farm.toml");
    if (*options.file == "-") return readers::starter_farm();
    write_new_file(*options.file, readers::starter_farm());
    return "Wrote " + *options.file + ". Change it to suit your birds, then: cropful plan " + *options.file + "\n";
}

}  // namespace cropful::commands
