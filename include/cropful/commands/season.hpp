#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/plan.hpp"

namespace cropful::commands {

struct SeasonOptions {
    FarmOptions farm;
    Days days;
};
CLI::App* add_to(CLI::App& program, SeasonOptions& options);
/// Brooders, days and costs of all hatches together.
std::string run(SeasonOptions const& options);

}  // namespace cropful::commands
