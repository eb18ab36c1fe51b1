#include "cropful/commands/sheet.hpp"

#include <CLI/CLI.hpp>

#include "commands/new_file.hpp"
#include "cropful/commands/plan.hpp"
#include "cropful/readers/rations.hpp"
#include "cropful/reports/sheet_html.hpp"

namespace cropful::commands {

CLI::App* add_to(CLI::App& program, SheetOptions& options) {
    CLI::App* app = program.add_subcommand("sheet", "sheets to hang on the brooder and to go shopping with");
    add_to(*app, options.farm);
    app->add_option("--from", options.from, "sheets from this day on")->type_name("DATE");
    app->add_option("--to", options.to, "sheets up to this day")->type_name("DATE");
    app->add_option("-o,--output", options.output, "write a file of this name; absent or -: print")->type_name("FILE");
    app->add_flag("--force", options.force, "write over a file that is there");
    app->footer("Example: cropful sheet farm.toml -o sheet.html");
    return app;
}

std::string run(SheetOptions const& options) {
    auto const [question, window] = question_between(options.farm, options.from, options.to);
    auto const advice = readers::RationsReader(options.farm.rations).brooder_advice();
    auto const sheet = engine::make_sheet(question.farm, question.rations, advice, window, question.diary);
    std::string const text = options.farm.json ? reports::sheet_json(sheet) : reports::sheet_html(sheet);
    if (!options.output || *options.output == "-") return text;
    write_new_file(*options.output, text, options.force ? Existing::replaced : Existing::kept);
    return "Wrote " + *options.output + ". Open it in a browser to look at it or to print it.\n";
}

}  // namespace cropful::commands
