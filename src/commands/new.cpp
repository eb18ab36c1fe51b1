#include "cropful/commands/new.hpp"

#include <CLI/CLI.hpp>

#include "commands/new_file.hpp"
#include "cropful/fault.hpp"
#include "cropful/fault/text.hpp"
#include "cropful/readers/farm.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, NewOptions& options) {
    CLI::App* app = program.add_subcommand("new", "write a commented farm file to start from");
    app->add_option("FILE", options.file, "name of the new file, or - to print it")->type_name("");
    app->footer("Example: cropful new farm.toml");
    return app;
}

Reply run(NewOptions const& options) {
    if (!options.file) throw WrongUse("what is the new file to be called? Such as: cropful new farm.toml");
    if (*options.file == "-") return {.out = readers::starter_farm()};
    write_new_file({.name = *options.file}, readers::starter_farm());
    std::string const name = escaped(*options.file);
    return {.out = "Wrote " + name + ". Change it to suit your birds, then: cropful plan " + name + "\n",
            .done = *options.file + " is written"};
}

}  // namespace cropful::commands
