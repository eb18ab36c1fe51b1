#pragma once

#include <optional>
#include <string>

#include "cropful/commands/output.hpp"
#include "cropful/commands/reply.hpp"

namespace CLI {
class App;
}

namespace cropful::commands {

struct PageOptions {
    std::optional<std::string> farm;   // a farm file that goes into it
    std::optional<std::string> parts;  // the folder of page.html and what belongs to it; absent: beside the program
    Output output;                     // a file, or a folder for a site where its name ends in a stroke
};
CLI::App* add_to(CLI::App& program, PageOptions& options);
/// The program as a page for a telephone: one file, or a site in a folder. Each file is written whole or not at all,
/// the one by which a telephone takes up the others last.
Reply run(PageOptions const& options);

}  // namespace cropful::commands
