#include "cropful/commands/today.hpp"

#include <filesystem>

#include <CLI/CLI.hpp>

#include "commands/progress.hpp"
#include "cropful/commands/clock.hpp"
#include "cropful/engine/today.hpp"
#include "cropful/fault.hpp"
#include "cropful/reports/today_page.hpp"
#include "cropful/store/files.hpp"

namespace cropful::commands {

namespace fs = std::filesystem;

namespace {

constexpr int most_days_ahead = 31;
constexpr std::size_t most_farm_megabytes = 1;

bool has_hatch(fs::path const& file) {
    try {
        return store::read_text(file.string(), most_farm_megabytes).find("[[hatch]]") != std::string::npos;
    } catch (Fault const&) {
        return false;
    }
}

}  // namespace

CLI::App* add_to(CLI::App& program, TodayOptions& options) {
    CLI::App* app = program.add_subcommand("today", "what to do now, chore by chore, and what is coming");
    app->add_option("FILE", options.farm.file, "farm file; absent: the only one here")->type_name("");
    app->add_option("--days", options.days, "so many days ahead; 1 when absent")
        ->type_name("N")
        ->check(CLI::Range(1, most_days_ahead));
    add_hatches(*app, options.farm);
    app->add_option("--now", options.farm.now, "as if it were then; absent: the clock")->type_name("MOMENT");
    add_common(*app, options.farm.json, options.farm.rations);
    add_units(*app, options.farm.units, "measures of what is printed");
    app->add_flag("--no-diary", options.farm.no_diary, "leave out the diary beside the farm file")
        ->group(answer_heading);
    app->footer("Example: cropful today farm.toml");
    return app;
}

Said run(TodayOptions const& options) {
    FarmOptions farm = options.farm;
    if (!farm.file) farm.file = only_farm_here();
    if (!farm.file) throw WrongUse("whose barn? Name the farm file, as in: cropful today farm.toml");
    auto const question = read_question(farm, {});
    auto const today =
        engine::make_today(question.farm, question.rations, question.diary, now_of(farm),
                           quantities::days(options.days), question.window.hatches, progress_for(question.farm));
    return farm.json ? Said(reports::today_json(today)) : reports::today_page(today);
}

std::optional<std::string> only_farm_here() {
    std::optional<std::string> found;
    std::error_code unread;
    for (fs::directory_entry const& entry : fs::directory_iterator(".", unread)) {
        if (entry.path().extension() != ".toml" || !entry.is_regular_file(unread) || !has_hatch(entry.path())) continue;
        if (found) return std::nullopt;
        found = entry.path().filename().string();
    }
    return found;
}

}  // namespace cropful::commands
