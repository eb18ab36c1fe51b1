#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/plan.hpp"
#include "cropful/commands/reply.hpp"

namespace cropful::commands {

struct BuyOptions {
    FarmOptions farm;
    Days days;
    bool plan = false;  // when to buy what
};
CLI::App* add_to(CLI::App& program, BuyOptions& options);
/// What to buy, and with `plan` when.
Said run(BuyOptions const& options);

}  // namespace cropful::commands
