#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"

namespace cropful::commands {

struct PlanOptions {
    FarmOptions farm;
    std::optional<std::string> from, to;  // dates
    bool all = false;                     // every fill
};
CLI::App* add_to(CLI::App& program, PlanOptions& options);
/// The page a grower acts on.
std::string run(PlanOptions const& options);

/// The stretch of time of --from and --to. Throws BadInput where it is empty.
engine::Window read_window(std::optional<std::string> const& from, std::optional<std::string> const& to);

}  // namespace cropful::commands
