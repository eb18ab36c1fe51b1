#include "cropful/commands/plan.hpp"

#include <CLI/CLI.hpp>

#include "cropful/reports/plan_csv.hpp"
#include "cropful/reports/plan_json.hpp"
#include "cropful/reports/plan_page.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, PlanOptions& options) {
    CLI::App* app = program.add_subcommand("plan", "one page: what to buy, fill, stir in and watch");
    add_to(*app, options.farm);
    add_csv(*app, options.farm);
    add_to(*app, options.days, "plan");
    app->add_flag("--all", options.all, "list every fill, and the feed and water of a day");
    app->footer("Example: cropful plan farm.toml --from 2027-05-01 --to 2027-06-01");
    return app;
}

void add_to(CLI::App& app, Days& days, std::string const& what) {
    app.add_option("--from", days.from, what + " from this day on")->type_name("DATE");
    app.add_option("--to", days.to, what + " up to this day")->type_name("DATE");
}

Asked question_between(FarmOptions const& options, Days const& days) {
    Question question = read_question(options, {});
    engine::Window const asked{read_moment(days.from, "--from"), read_moment(days.to, "--to")};
    if (asked.from && asked.until && !(*asked.from < *asked.until)) {
        throw BadInput(in_quotes(*days.to), "a date after --from " + *days.from,
                       {.file = "", .line = 0, .key = "--to"});
    }
    engine::Window const window{asked.from ? asked.from : question.window.from, asked.until};
    return {std::move(question), window};
}

Planned plan_between(FarmOptions const& options, Days const& days, engine::Wanted wanted) {
    auto const [question, window] = question_between(options, days);
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
