#include "cropful/commands/check.hpp"

#include <CLI/CLI.hpp>

#include "cropful/reports/check_page.hpp"
#include "cropful/reports/plan_json.hpp"

namespace cropful::commands {

namespace {

constexpr auto kept_for_a_check = quantities::days(1);  // without --until only the age itself is judged

}  // namespace

CLI::App* add_to(CLI::App& program, CheckOptions& options) {
    CLI::App* app = program.add_subcommand("check", "labels against the published needs");
    add_to(*app, options.farm);
    add_hatches(*app, options.farm);
    add_to(*app, options.days, "labels of what is fed");
    app->add_flag("--by-energy", options.by_energy, "scale each need to the feed's energy");
    app->footer("Example: cropful check --kind bobwhite --age \"0 d\" --until \"6 wk\" --protein \"24 %\"");
    return app;
}

Said run(CheckOptions const& options) {
    FarmOptions const& asked = options.farm;
    if (!asked.file && asked.flags.has("--kind") && !asked.flags.has("--protein") && asked.labels.empty()) {
        throw WrongUse("what does the label state? Say --protein \"24 %\", or --label \"calcium=0.9 %\"");
    }
    auto const [question, window] =
        question_between(asked, options.days, {.birds_matter = false, .kept = kept_for_a_check, .counted = {}});
    auto const scale = options.by_energy ? engine::NeedScale::by_energy : engine::NeedScale::as_printed;
    auto const plan = engine::make_plan(question.farm, question.rations, window, question.diary, scale, {.use = false});
    return asked.json ? Said(reports::check_json_text(plan)) : reports::check_page(plan, asked.sources);
}

}  // namespace cropful::commands
