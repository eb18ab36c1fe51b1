#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/plan.hpp"
#include "cropful/commands/reply.hpp"

namespace cropful::commands {

struct SeasonOptions {
    FarmOptions farm;
    Days days;
};
CLI::App* add_to(CLI::App& program, SeasonOptions& options);
/// Brooders, days and costs of all hatches together.
Said run(SeasonOptions const& options);

}  // namespace cropful::commands
