#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"

namespace cropful::commands {

struct MixOptions {
    FarmOptions farm;
    std::optional<std::string> water;  // a question about plain water, without birds
};
CLI::App* add_to(CLI::App& program, MixOptions& options);
/// What to stir into the water.
std::string run(MixOptions const& options);

}  // namespace cropful::commands
