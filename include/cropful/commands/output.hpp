#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/reply.hpp"

namespace CLI {
class App;
}

namespace cropful::commands {

/// Where an answer that is a file goes.
struct Output {
    std::optional<std::string> file;  // absent or "-": standard output
    bool force = false;               // over a file that exists
};
/// Adds -o, --output and --force.
void add_to(CLI::App& app, Output& output);
/// What to print: the text itself, or that it was written, whole or not at all, and `advice` on it. What the question
/// is answered from is never written over.
Reply deliver(Output const& output, FarmOptions const& question, std::string const& text, std::string const& advice);

}  // namespace cropful::commands
