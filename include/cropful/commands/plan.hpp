#pragma once

#include <optional>
#include <string>
#include <utility>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/reply.hpp"

namespace cropful::commands {

/// The time that is asked about: dates, as they were written.
struct Days {
    std::optional<std::string> from, to;
};
/// Adds --from and --to; `what` is what they bound: "plan" from this day on.
void add_to(CLI::App& app, Days& days, std::string const& what);

struct PlanOptions {
    FarmOptions farm;
    Days days;
    bool all = false;  // every fill
};
CLI::App* add_to(CLI::App& program, PlanOptions& options);
/// The page a grower acts on.
Said run(PlanOptions const& options);

struct Asked {
    Question question;
    engine::Window window;  // what of it is asked about
};
/// A question about the time from --from to --to; without --from, of a farm file, from now on. Throws BadInput where
/// that is empty, NoAnswer where all birds are gone.
Asked question_between(FarmOptions const& options, Days const& days, Defaults const& defaults = {});

struct Planned {
    engine::Plan plan;
    engine::Window window;
};
/// The plan of a farm for the time from --from to --to.
Planned plan_between(FarmOptions const& options, Days const& days, engine::Wanted wanted = {});

}  // namespace cropful::commands
