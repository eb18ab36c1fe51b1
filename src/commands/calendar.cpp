#include "cropful/commands/calendar.hpp"

#include <CLI/CLI.hpp>

#include "commands/new_file.hpp"
#include "cropful/commands/clock.hpp"
#include "cropful/commands/plan.hpp"
#include "cropful/reports/calendar.hpp"

namespace cropful::commands {

namespace {

using quantities::Duration;

constexpr Duration usual_alarm = quantities::days(2.0 / 24);
constexpr Duration earliest_alarm = quantities::days(14);

/// How long before an event its alarm rings; empty for none.
std::optional<Duration> read_alarm(std::optional<std::string> const& text) {
    if (!text) return usual_alarm;
    if (*text == "none") return std::nullopt;
    Flags one;
    one.set("--alarm", *text);
    return one.read("--alarm", [](std::string_view words) {
        Duration const before = quantities::parse_duration(words);
        if (before > earliest_alarm) throw BadInput(in_quotes(words), "at most 2 wk, or none");
        return before;
    });
}

}  // namespace

CLI::App* add_to(CLI::App& program, CalendarOptions& options) {
    CLI::App* app = program.add_subcommand("calendar", "the plan as events for a calendar");
    add_to(*app, options.farm);
    app->add_option("--from", options.from, "events from this day on")->type_name("DATE");
    app->add_option("--to", options.to, "events up to this day")->type_name("DATE");
    app->add_option("--alarm", options.alarm, "ring so long before each event; 2 h when absent, or none")
        ->type_name("TIME");
    app->add_option("--stamp", options.stamp, "when it was written, in UTC; absent: now")->type_name("MOMENT");
    app->add_option("-o,--output", options.output, "write a file of this name; absent or -: print")->type_name("FILE");
    app->add_flag("--force", options.force, "write over a file that is there");
    app->footer("Example: cropful calendar farm.toml -o farm.ics");
    return app;
}

std::string run(CalendarOptions const& options) {
    auto const alarm = read_alarm(options.alarm);
    auto const stamp = read_moment(options.stamp, "--stamp");
    auto const [question, window] = question_between(options.farm, options.from, options.to);
    auto const plan = engine::make_plan(question.farm, question.rations, window, question.diary);
    std::string const text = options.farm.json
                                 ? reports::calendar_json(plan, question.rations)
                                 : reports::calendar(plan, question.rations, stamp ? *stamp : now_utc(), alarm);
    if (!options.output || *options.output == "-") return text;
    write_new_file(*options.output, text, options.force ? Existing::replaced : Existing::kept);
    return "Wrote " + *options.output + ". Import it into a calendar of its own.\n";
}

}  // namespace cropful::commands
