#include "cropful/commands/output.hpp"

#include <CLI/CLI.hpp>

#include "commands/inputs.hpp"
#include "commands/new_file.hpp"
#include "cropful/fault/characters.hpp"

namespace cropful::commands {

void add_to(CLI::App& app, Output& output) {
    app.add_option("-o,--output", output.file, "write a file of this name; absent or -: print")->type_name("FILE");
    app.add_flag("--force", output.force, "write over a file that is there");
}

Reply deliver(Output const& output, FarmOptions const& question, std::string const& text, std::string const& advice) {
    if (!output.file || *output.file == "-") return {.out = text};
    NewFile const file{.name = *output.file,
                       .existing = output.force ? Existing::replaced : Existing::kept,
                       .cure = "choose another name, or say --force",
                       .inputs = inputs_of(question)};
    write_new_file(file, text);
    return {.out = "Wrote " + escaped(file.name) + ". " + advice + "\n", .done = file.name + " is written"};
}

}  // namespace cropful::commands
