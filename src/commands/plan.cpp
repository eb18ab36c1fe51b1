#include "cropful/commands/plan.hpp"

#include <algorithm>

#include <CLI/CLI.hpp>

#include "commands/progress.hpp"

#include "cropful/fault.hpp"

#include "cropful/reports/plan_csv.hpp"
#include "cropful/reports/plan_json.hpp"
#include "cropful/reports/plan_page.hpp"

namespace cropful::commands {

namespace {

/// From now on, where birds are there already. Throws NoAnswer where all are gone.
void start_now(engine::Window& window, domain::Farm const& farm, domain::Moment now) {
    std::optional<domain::Moment> last;
    bool begun = false;
    for (domain::Hatch const& hatch : farm.hatches) {
        if (!window.hatches.holds(hatch.name)) continue;
        last = std::max(last.value_or(hatch.date), hatch.date + hatch.until);
        begun = begun || hatch.date + hatch.first_age < now;
    }
    if (!begun) return;
    if (*last <= now) {
        throw NoAnswer("the last birds left on " + last->day_year() + "; --from start shows the whole of their time");
    }
    window.from = now;
}

}  // namespace

CLI::App* add_to(CLI::App& program, PlanOptions& options) {
    CLI::App* app = program.add_subcommand("plan", "one page: what to buy, fill, stir in and watch");
    add_to(*app, options.farm);
    add_hatches(*app, options.farm);
    add_csv(*app, options.farm);
    add_to(*app, options.days, "plan");
    app->add_flag("--all", options.all, "list every fill, and the feed and water of a day");
    app->footer("Example: cropful plan farm.toml --from 2027-05-01 --to 2027-06-01");
    return app;
}

void add_to(CLI::App& app, Days& days, std::string const& what) {
    app.add_option("--from", days.from, what + " from this day on, or start: from the first; absent: from now")
        ->type_name("DATE|start");
    app.add_option("--to", days.to, what + " up to this day")->type_name("DATE");
}

Asked question_between(FarmOptions const& options, Days const& days, Defaults const& defaults) {
    Question question = read_question(options, defaults);
    engine::Window window = question.window;
    bool const whole = days.from == "start";
    auto from = whole ? std::nullopt : read_moment(days.from, "--from");
    window.until = read_moment(days.to, "--to");
    // a date without an hour is the first chore of its day
    if (from && !domain::says_hour(*days.from)) from = domain::at_first_chore(*from, question.farm);
    if (window.until && !domain::says_hour(*days.to)) {
        window.until = domain::at_first_chore(*window.until, question.farm);
    }
    if (from) window.from = from;
    if (options.file && !whole) window.now = now_of(options);
    if (!from && !whole && options.file) start_now(window, question.farm, now_of(options));
    if (window.from && window.until && !(*window.from < *window.until)) {
        std::string const after = from ? "--from " + *days.from : "the start, " + window.from->iso();
        throw BadInput(in_quotes(*days.to), "a date after " + after, {.file = "", .line = 0, .key = "--to"});
    }
    return {std::move(question), std::move(window)};
}

Planned plan_between(FarmOptions const& options, Days const& days, engine::Wanted wanted) {
    auto const [question, window] = question_between(options, days);
    wanted.progress = progress_for(question.farm);
    return {engine::make_plan(question.farm, question.rations, window, question.diary, engine::NeedScale::as_printed,
                              wanted),
            window};
}

Said run(PlanOptions const& options) {
    auto const [plan, window] = plan_between(options.farm, options.days);
    if (options.farm.json) return reports::plan_json(plan, window);
    if (options.farm.csv) return reports::plan_csv(plan);
    return reports::plan_page(plan, options.all ? reports::Detail::everything : reports::Detail::one_page,
                              options.farm.sources);
}

}  // namespace cropful::commands
