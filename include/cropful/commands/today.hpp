#pragma once

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/reply.hpp"

namespace cropful::commands {

struct TodayOptions {
    FarmOptions farm;
    int days = 1;
};
CLI::App* add_to(CLI::App& program, TodayOptions& options);
/// What to do from now on. Throws NoAnswer where all birds are gone.
Said run(TodayOptions const& options);

/// The only farm file with a hatch in the folder where the program was started; empty where there is none, or several.
std::optional<std::string> only_farm_here();

}  // namespace cropful::commands
