#include "cropful/commands/buy.hpp"

#include <CLI/CLI.hpp>

#include "cropful/commands/plan.hpp"
#include "cropful/reports/buy_text.hpp"
#include "cropful/reports/plan_csv.hpp"
#include "cropful/reports/plan_json.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, BuyOptions& options) {
    CLI::App* app = program.add_subcommand("buy", "how many bags and packs to buy, and what they cost");
    add_to(*app, options.farm);
    add_csv(*app, options.farm);
    app->add_option("--from", options.from, "buy for the time from this day on")->type_name("DATE");
    app->add_option("--to", options.to, "buy for the time up to this day")->type_name("DATE");
    app->footer("Example: cropful buy --kind bobwhite --chicks 240 --until \"6 wk\" --bag \"50 lb\"");
    return app;
}

std::string run(BuyOptions const& options) {
    auto const [plan, window] = plan_between(options.farm, options.from, options.to);
    if (options.farm.json) return reports::buy_json(plan, window);
    if (options.farm.csv) return reports::buy_csv(plan);
    return reports::buy_text(plan, options.farm.sources);
}

}  // namespace cropful::commands
