#include "cropful/commands/sheet.hpp"
#include "cropful/commands/files.hpp"

#include <CLI/CLI.hpp>

#include "commands/progress.hpp"
#include "cropful/commands/plan.hpp"
#include "cropful/readers/rations.hpp"
#include "cropful/reports/sheet_html.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, SheetOptions& options) {
    CLI::App* app = program.add_subcommand("sheet", "sheets to hang on the brooder and to go shopping with");
    add_to(*app, options.farm);
    add_hatches(*app, options.farm);
    add_to(*app, options.days, "sheets");
    app->add_flag("--each-house", options.each_house, "a page for each house, not a column");
    app->add_flag("--charts", options.charts, "a page of charts and feeds for each hatch");
    add_to(*app, options.output);
    app->footer("Example: cropful sheet farm.toml -o sheet.html");
    return app;
}

Reply run(SheetOptions const& options) {
    auto const [question, window] = question_between(options.farm, options.days);
    auto const advice = rations_reader(options.farm.rations).brooder_advice();
    auto const sheet = engine::make_sheet({question.farm, question.rations, question.diary}, advice, window,
                                          progress_for(question.farm));
    auto const houses = options.each_house ? reports::Houses::apart : reports::Houses::together;
    auto const charts = options.charts ? reports::Charts::drawn : reports::Charts::left_out;
    std::string const text = options.farm.json ? reports::sheet_json(sheet)
                                               : reports::sheet_html(sheet, houses, charts, options.farm.sources);
    return deliver(options.output, options.farm, text, "Open it in a browser to look at it or to print it.");
}

}  // namespace cropful::commands
