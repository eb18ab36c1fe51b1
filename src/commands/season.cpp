#include "cropful/commands/season.hpp"

#include <CLI/CLI.hpp>

#include "cropful/commands/plan.hpp"
#include "cropful/engine/overview.hpp"
#include "cropful/reports/season_json.hpp"
#include "cropful/reports/season_page.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, SeasonOptions& options) {
    CLI::App* app = program.add_subcommand("season", "who is in which brooder, the weeks, feed costs");
    add_to(*app, options.farm);
    add_to(*app, options.days, "the season");
    app->footer("Example: cropful season farm.toml --from 2027-05-01");
    return app;
}

Said run(SeasonOptions const& options) {
    auto const [question, window] = question_between(options.farm, options.days);
    auto const overview = engine::make_overview({question.farm, question.rations, question.diary}, window);
    return options.farm.json ? Said(reports::season_json(overview))
                             : reports::season_page(overview, options.farm.sources);
}

}  // namespace cropful::commands
