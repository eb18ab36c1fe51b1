#include "cropful/commands/season.hpp"

#include <CLI/CLI.hpp>

#include "cropful/commands/plan.hpp"
#include "cropful/engine/season.hpp"
#include "cropful/reports/season_json.hpp"
#include "cropful/reports/season_text.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, SeasonOptions& options) {
    CLI::App* app = program.add_subcommand("season", "who is in which brooder, the weeks, feed costs");
    add_to(*app, options.farm);
    add_to(*app, options.days, "the season");
    app->footer("Example: cropful season farm.toml --from 2027-05-01");
    return app;
}

std::string run(SeasonOptions const& options) {
    auto const [question, window] = question_between(options.farm, options.days);
    auto const season = engine::make_season(question.farm, question.rations, window, question.diary);
    return options.farm.json ? reports::season_json(season) : reports::season_text(season, options.farm.sources);
}

}  // namespace cropful::commands
