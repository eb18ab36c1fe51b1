#pragma once

#include <optional>
#include <string>

#include "cropful/commands/reply.hpp"

namespace CLI {
class App;
}

namespace cropful::commands {

struct NewOptions {
    std::optional<std::string> file;  // "-" for standard output
    std::optional<std::string> units;
};
CLI::App* add_to(CLI::App& program, NewOptions& options);
/// Writes a commented farm file; never over another file, and never half of one.
Reply run(NewOptions const& options);

}  // namespace cropful::commands
