#include "cropful/commands/calendar.hpp"

#include <filesystem>

#include <CLI/CLI.hpp>

#include "commands/progress.hpp"
#include "cropful/commands/clock.hpp"
#include "cropful/commands/plan.hpp"
#include "cropful/reports/calendar.hpp"
#include "cropful/store/files.hpp"

namespace cropful::commands {

namespace {

using quantities::Duration;

constexpr Duration earliest_alarm = quantities::days(14);

/// How long before an event its alarm rings; empty for none.
std::optional<Duration> read_alarm(std::optional<std::string> const& text) {
    if (!text) return quantities::days(0);
    if (*text == "none") return std::nullopt;
    Flags one;
    one.set("--alarm", *text);
    return one.read("--alarm", [](std::string_view words) {
        Duration const before = quantities::parse_duration(words);
        if (before > earliest_alarm) throw BadInput(in_quotes(words), "at most 2 wk, or none");
        return before;
    });
}

constexpr std::size_t most_calendar_megabytes = 20;

/// The calendar that is to be written over, as it is; empty where none is.
std::string calendar_there(Output const& output) {
    bool const there = output.file && output.force && std::filesystem::is_regular_file(*output.file);
    return there ? store::read_text(*output.file, most_calendar_megabytes) : "";
}

}  // namespace

CLI::App* add_to(CLI::App& program, CalendarOptions& options) {
    CLI::App* app = program.add_subcommand("calendar", "the plan as events for a calendar");
    add_to(*app, options.farm);
    add_hatches(*app, options.farm);
    add_to(*app, options.days, "events");
    app->add_option("--alarm", options.alarm,
                    "ring so long before what is not done every day, at a chore; 0 h when absent, or none")
        ->type_name("TIME");
    app->add_option("--stamp", options.stamp, "when it was written, in UTC; absent: now")->type_name("MOMENT");
    add_to(*app, options.output);
    app->footer("Example: cropful calendar farm.toml -o farm.ics");
    return app;
}

Reply run(CalendarOptions const& options) {
    auto const alarm = read_alarm(options.alarm);
    auto const stamp = read_moment(options.stamp, "--stamp");
    auto const [question, window] = question_between(options.farm, options.days);
    auto const agenda =
        engine::make_agenda({question.farm, question.rations, question.diary}, window, progress_for(question.farm));
    std::string const text = options.farm.json ? reports::calendar_json(agenda)
                                               : reports::calendar(agenda, stamp ? *stamp : now_utc(), alarm,
                                                                   calendar_there(options.output));
    return deliver(options.output, options.farm, text, "Import it into a calendar of its own.");
}

}  // namespace cropful::commands
