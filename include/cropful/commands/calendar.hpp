#pragma once

#include <optional>
#include <string>

#include "cropful/commands/farm_options.hpp"

namespace cropful::commands {

struct CalendarOptions {
    FarmOptions farm;
    std::optional<std::string> from, to;  // dates
    std::optional<std::string> alarm;     // "2 h" or "none"
    std::optional<std::string> stamp;     // a moment in UTC; absent: now
    std::optional<std::string> output;    // a file; absent or "-": printed
    bool force = false;
};
CLI::App* add_to(CLI::App& program, CalendarOptions& options);
/// A plan as events for a calendar.
std::string run(CalendarOptions const& options);

}  // namespace cropful::commands
