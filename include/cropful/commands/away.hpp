#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/reply.hpp"

namespace cropful::commands {

struct AwayOptions {
    FarmOptions farm;
    std::optional<std::string> from, until;  // moments; from: now when absent
    std::optional<std::string> sure;         // "99 %"
};
CLI::App* add_to(CLI::App& program, AwayOptions& options);
/// Whether every hopper and drinker holds while nobody is there.
Said run(AwayOptions const& options);

}  // namespace cropful::commands
