#include "cropful/commands/output.hpp"

#include <CLI/CLI.hpp>

#include "commands/new_file.hpp"

namespace cropful::commands {

void add_to(CLI::App& app, Output& output) {
    app.add_option("-o,--output", output.file, "write a file of this name; absent or -: print")->type_name("FILE");
    app.add_flag("--force", output.force, "write over a file that is there");
}

std::string deliver(Output const& output, std::string const& text, std::string const& advice) {
    if (!output.file || *output.file == "-") return text;
    write_new_file(*output.file, text, output.force ? Existing::replaced : Existing::kept,
                   "choose another name, or say --force");
    return "Wrote " + *output.file + ". " + advice + "\n";
}

}  // namespace cropful::commands
