#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"

namespace cropful::commands {

struct BuyOptions {
    FarmOptions farm;
    std::optional<std::string> from, to;  // dates
};
CLI::App* add_to(CLI::App& program, BuyOptions& options);
/// What to buy.
std::string run(BuyOptions const& options);

}  // namespace cropful::commands
