#include "cropful/commands/buy.hpp"

#include <CLI/CLI.hpp>

#include "cropful/commands/plan.hpp"
#include "cropful/reports/buy_page.hpp"
#include "cropful/reports/plan_csv.hpp"
#include "cropful/reports/plan_json.hpp"
#include "cropful/reports/trips_page.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, BuyOptions& options) {
    CLI::App* app = program.add_subcommand("buy", "how many bags and packs to buy, and what they cost");
    add_to(*app, options.farm);
    add_csv(*app, options.farm);
    add_to(*app, options.days, "buy");
    app->add_flag("--plan", options.plan, "when to go and buy what, at the least cost");
    app->footer("Example: cropful buy --kind bobwhite --chicks 240 --until \"6 wk\" --bag \"50 lb\"");
    return app;
}

Said run(BuyOptions const& options) {
    auto const [plan, window] =
        plan_between(options.farm, options.days, {.hoppers = false, .drinkers = false, .course = false});
    if (options.plan && options.farm.csv) throw WrongUse("--plan makes no table of CSV; leave out --plan or --csv");
    if (options.plan) {
        auto const trips = engine::plan_trips(plan);
        return options.farm.json ? Said(reports::trips_json(trips)) : reports::trips_page(trips, options.farm.sources);
    }
    if (options.farm.json) return reports::buy_json(plan, window);
    if (options.farm.csv) return reports::buy_csv(plan);
    return reports::buy_page(plan, options.farm.sources);
}

}  // namespace cropful::commands
