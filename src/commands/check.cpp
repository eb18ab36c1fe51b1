#include "cropful/commands/check.hpp"

#include <CLI/CLI.hpp>

#include "cropful/reports/check_text.hpp"
#include "cropful/reports/plan_json.hpp"

namespace cropful::commands {

namespace {

constexpr auto kept = quantities::days(1);  // without --until only the age itself is judged

/// Judges a hatch again with needs scaled to each feed's energy; daily grams and excesses do not depend on it.
void scale(engine::HatchPlan& hatch, domain::Farm const& farm, engine::Rations const& rations) {
    engine::Kind const& kind = rations.kinds.at(hatch.hatch.kind);
    engine::NeedsTable const& needs = rations.needs.at(kind.needs_table);
    auto old = hatch.checks.begin();
    std::vector<engine::Check> scaled;
    for (engine::FeedNeed const& part : hatch.feeds) {
        for (engine::Check check : engine::check(farm.feeds.at(part.feed), kind, needs, part.from, part.to,
                                                 hatch.hatch.laying_from, engine::NeedScale::by_energy)) {
            check.given_per_bird = old->given_per_bird;
            check.need_per_bird = old->need_per_bird;
            if (old->verdict == engine::Verdict::over) check.verdict = old->verdict;
            scaled.push_back(std::move(check));
            ++old;
        }
    }
    hatch.checks = std::move(scaled);
}

void scale(engine::Plan& plan, engine::Rations const& rations) {
    for (engine::HatchPlan& hatch : plan.hatches) scale(hatch, plan.farm, rations);
    plan.assumptions.push_back({"needs are scaled to the energy each label states, as printed where it states none",
                                {"asked for with --by-energy", domain::Standing::yours}});
}

}  // namespace

CLI::App* add_to(CLI::App& program, CheckOptions& options) {
    CLI::App* app = program.add_subcommand("check", "labels against the published needs");
    add_to(*app, options.farm);
    app->add_flag("--by-energy", options.by_energy, "scale each need to the feed's energy");
    app->footer("Example: cropful check --kind bobwhite --age \"0 d\" --until \"6 wk\" --protein \"24 %\"");
    return app;
}

std::string run(CheckOptions const& options) {
    FarmOptions const& asked = options.farm;
    if (!asked.file && asked.flags.has("--kind") && !asked.flags.has("--protein") && asked.labels.empty()) {
        throw WrongUse("what does the label state? Say --protein \"24 %\", or --label \"calcium=0.9 %\"");
    }
    auto const [farm, rations, window] = read_question(asked, {.birds_matter = false, .kept = kept, .counted = {}});
    auto plan = engine::make_plan(farm, rations, window);
    if (options.by_energy) scale(plan, rations);
    return asked.json ? reports::check_json_text(plan) : reports::check_text(plan, asked.sources);
}

}  // namespace cropful::commands
