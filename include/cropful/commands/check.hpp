#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/plan.hpp"
#include "cropful/commands/reply.hpp"

namespace cropful::commands {

struct CheckOptions {
    FarmOptions farm;
    Days days;
    bool by_energy = false;  // needs scaled to each feed's energy
};
CLI::App* add_to(CLI::App& program, CheckOptions& options);
/// The labels against the published needs.
Said run(CheckOptions const& options);

}  // namespace cropful::commands
