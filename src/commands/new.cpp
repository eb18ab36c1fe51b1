#include "cropful/commands/new.hpp"

#include <CLI/CLI.hpp>

#include "commands/new_file.hpp"
#include "cropful/commands/farm_options.hpp"
#include "cropful/fault.hpp"
#include "cropful/fault/characters.hpp"
#include "cropful/readers/farm.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, NewOptions& options) {
    CLI::App* app = program.add_subcommand("new", "write a commented farm file to start from");
    app->add_option("FILE", options.file, "name of the new file, or - to print it")->type_name("");
    add_units(*app, options.units, "of the amounts in it; us when absent");
    app->footer("Example: cropful new farm.toml");
    return app;
}

Reply run(NewOptions const& options) {
    if (!options.file) throw WrongUse("what is the new file to be called? Such as: cropful new farm.toml");
    std::string const text = readers::starter_farm(measures_of(options.units, quantities::Measures::us));
    if (*options.file == "-") return {.out = text};
    write_new_file({.name = *options.file}, text);
    std::string const name = escaped(*options.file);
    return {.out = "Wrote " + name + ". Change it to suit your birds, then: cropful today " + name + "\n",
            .done = *options.file + " is written"};
}

}  // namespace cropful::commands
