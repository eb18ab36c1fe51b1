#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"

namespace cropful::commands {

struct SheetOptions {
    FarmOptions farm;
    std::optional<std::string> from, to;  // dates
    std::optional<std::string> output;    // absent or "-": standard output
    bool force = false;                   // over a file that exists
};
CLI::App* add_to(CLI::App& program, SheetOptions& options);
/// Sheets to hang up, as one HTML file that is written whole or not at all.
std::string run(SheetOptions const& options);

}  // namespace cropful::commands
