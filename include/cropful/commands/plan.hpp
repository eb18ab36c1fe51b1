#pragma once

#include <optional>
#include <string>
#include <utility>

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

struct Asked {
    Question question;
    engine::Window window;  // what of it is asked about
};
/// A question about the time from --from to --to. Throws BadInput where that is empty.
Asked question_between(FarmOptions const& options, std::optional<std::string> const& from,
                       std::optional<std::string> const& to);

struct Planned {
    engine::Plan plan;
    engine::Window window;
};
/// The plan of a farm for the time from --from to --to.
Planned plan_between(FarmOptions const& options, std::optional<std::string> const& from,
                     std::optional<std::string> const& to);

}  // namespace cropful::commands
