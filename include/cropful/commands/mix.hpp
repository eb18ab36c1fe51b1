#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/plan.hpp"
#include "cropful/commands/reply.hpp"

namespace cropful::commands {

struct MixOptions {
    FarmOptions farm;
    Days days;
    std::optional<std::string> water;       // a question about plain water, without birds
    std::optional<std::string> flock{};     // weight of the birds that drink it, where the rate is by that
    std::optional<std::string> chlorine{};  // wanted in it
    std::optional<std::string> bleach{};    // of what strength
};
CLI::App* add_to(CLI::App& program, MixOptions& options);
/// What to stir into the water.
Said run(MixOptions const& options);

}  // namespace cropful::commands
