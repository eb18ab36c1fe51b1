#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/output.hpp"
#include "cropful/commands/plan.hpp"

namespace cropful::commands {

struct CalendarOptions {
    FarmOptions farm;
    Days days;
    std::optional<std::string> alarm;  // "2 h" or "none"
    std::optional<std::string> stamp;  // a moment in UTC; absent: now
    Output output;
};
CLI::App* add_to(CLI::App& program, CalendarOptions& options);
/// A plan as events for a calendar.
Reply run(CalendarOptions const& options);

}  // namespace cropful::commands
