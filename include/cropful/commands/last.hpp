#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/reply.hpp"

namespace cropful::commands {

struct LastOptions {
    FarmOptions farm;
    std::optional<std::string> on;  // when the vessels are full; absent: now, or the start of a hatch that is not now
};
CLI::App* add_to(CLI::App& program, LastOptions& options);
/// How long full hoppers and drinkers last.
Said run(LastOptions const& options);

}  // namespace cropful::commands
