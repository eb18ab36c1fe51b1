#pragma once

#include <optional>
#include <string>
#include "cropful/commands/reply.hpp"

namespace CLI {
class App;
}

namespace cropful::commands {

struct TableOptions {
    std::optional<std::string> what;  // kinds, needs, units, drugs, limits, forms, a kind or a table of needs
    std::optional<std::string> units;
    std::optional<std::string> rations;
    bool json = false;
};
CLI::App* add_to(CLI::App& program, TableOptions& options);
/// What is built in, with its sources.
Said run(TableOptions const& options);

}  // namespace cropful::commands
