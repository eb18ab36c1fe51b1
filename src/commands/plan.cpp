#include "cropful/commands/plan.hpp"

#include <CLI/CLI.hpp>

#include "cropful/reports/plan_csv.hpp"
#include "cropful/reports/plan_json.hpp"
#include "cropful/reports/plan_text.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, PlanOptions& options) {
    CLI::App* app = program.add_subcommand("plan", "one page: what to buy, fill, stir in and watch");
    add_to(*app, options.farm);
    add_csv(*app, options.farm);
    app->add_option("--from", options.from, "plan from this day on")->type_name("DATE");
    app->add_option("--to", options.to, "plan up to this day")->type_name("DATE");
    app->add_flag("--all", options.all, "list every fill, and the feed and water of a day");
    app->footer("Example: cropful plan farm.toml --from 2027-05-01 --to 2027-06-01");
    return app;
}

Asked question_between(FarmOptions const& options, std::optional<std::string> const& from,
                       std::optional<std::string> const& to) {
    Question question = read_question(options, {});
    engine::Window const asked{read_moment(from, "--from"), read_moment(to, "--to")};
    if (asked.from && asked.until && !(*asked.from < *asked.until)) {
        throw BadInput(in_quotes(*to), "a date after --from " + *from, {.file = "", .line = 0, .key = "--to"});
    }
    engine::Window const window{asked.from ? asked.from : question.window.from, asked.until};
    return {std::move(question), window};
}

Planned plan_between(FarmOptions const& options, std::optional<std::string> const& from,
                     std::optional<std::string> const& to) {
    auto const [question, window] = question_between(options, from, to);
    return {engine::make_plan(question.farm, question.rations, window, question.diary), window};
}

std::string run(PlanOptions const& options) {
    auto const [plan, window] = plan_between(options.farm, options.from, options.to);
    if (options.farm.json) return reports::plan_json(plan, window);
    if (options.farm.csv) return reports::plan_csv(plan);
    return reports::plan_text(plan, options.all ? reports::Detail::everything : reports::Detail::one_page,
                              options.farm.sources);
}

}  // namespace cropful::commands
