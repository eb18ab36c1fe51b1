#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/output.hpp"
#include "cropful/commands/plan.hpp"

namespace cropful::commands {

struct SheetOptions {
    FarmOptions farm;
    Days days;
    Output output;
    bool each_house = false;  // a page for each instead of a column
    bool charts = false;
};
CLI::App* add_to(CLI::App& program, SheetOptions& options);
/// Sheets to hang up, as one HTML file that is written whole or not at all.
Reply run(SheetOptions const& options);

}  // namespace cropful::commands
