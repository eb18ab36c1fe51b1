#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/commands/flags.hpp"
#include "cropful/engine/plan.hpp"
#include "cropful/readers/rations.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace CLI {
class App;
}

namespace cropful::commands {

/// A question about a farm: a file, or flags that describe one hatch.
struct FarmOptions {
    std::optional<std::string> file;
    Flags flags;
    std::vector<std::string> labels;  // --label, as typed
    std::optional<std::string> units;
    std::optional<std::string> now;    // a moment that stands in for the clock
    std::vector<std::string> hatches;  // --hatch, as typed
    std::optional<std::string> rations;
    bool json = false;
    bool csv = false;
    bool no_diary = false;  // leaves out the diary beside the file
    reports::Sources sources = reports::Sources::left_out;
};

/// Adds the file, the flags of a hatch but for `without`, --now, --units, --rations, --no-diary and --json.
void add_to(CLI::App& app, FarmOptions& options, std::string const& without = "");
/// Adds --hatch, for answers that can be about some hatches alone.
void add_hatches(CLI::App& app, FarmOptions& options);
/// Adds --csv, for answers that are one table.
void add_csv(CLI::App& app, FarmOptions& options);
/// Adds --json and --rations alone.
void add_common(CLI::App& app, bool& json, std::optional<std::string>& rations);
/// Adds --units alone, and --sources alone.
void add_units(CLI::App& app, std::optional<std::string>& units, char const* help);
void add_sources(CLI::App& app, reports::Sources& sources);

/// What holds where the flags are silent.
struct Defaults {
    bool birds_matter = true;                  // false: without a number, one bird stands for all
    std::optional<quantities::Duration> kept;  // past --age, without --until; absent: --until must be given
    std::optional<domain::Moment> counted;     // when the birds have --age, without --date; absent: today
};

struct Question {
    domain::Farm farm;
    rations::Rations rations;
    domain::Diary diary;    // of the farm file, where there is one
    engine::Window window;  // starts at --age for birds counted as chicks or eggs; about the hatches of --hatch
};

/// Reads the file or puts the flags together. Throws BadInput or WrongUse.
Question read_question(FarmOptions const& options, Defaults defaults);

/// The moment of --now, or what the clock says.
domain::Moment now_of(std::optional<std::string> const& said);
domain::Moment now_of(FarmOptions const& options);

/// Throws WrongUse for birds told by flags without a hopper or a drinker.
void need_vessels(FarmOptions const& options);

std::optional<domain::Moment> read_moment(std::optional<std::string> const& text, std::string const& flag);
quantities::Measures measures_of(std::optional<std::string> const& units, quantities::Measures otherwise);

}  // namespace cropful::commands
