#include "cropful/commands/away.hpp"

#include <CLI/CLI.hpp>

#include "cropful/commands/clock.hpp"
#include "cropful/engine/away.hpp"
#include "cropful/reports/away_json.hpp"
#include "cropful/reports/away_page.hpp"

namespace cropful::commands {

namespace {

constexpr auto always_kept = quantities::days(400);  // birds told by flags are there all the time asked about
constexpr auto longest = quantities::days(366);      // longer is a slip

double parse_sure(std::string_view text) {
    double const sure = quantities::parse_percent(text);
    if (sure < 0.5 || sure > 0.999 + 1e-9) throw BadInput(in_quotes(text), "from 50 % to 99.9 %");
    return sure;
}

engine::Absence absence_of(AwayOptions const& options, domain::Moment now) {
    auto const from = read_moment(options.from, "--from").value_or(now);
    auto const until = read_moment(options.until, "--until");
    if (!until) throw WrongUse("when will somebody be back? Say it with --until, such as --until 2027-04-25T18:00");
    Flags flags;
    flags.set("--until", *options.until);
    flags.read("--until", [&](std::string_view text) {
        bool const fits = *until > from && *until - from <= longest;
        if (!fits) throw BadInput(in_quotes(text), "a moment after --from (" + from.iso() + "), at most a year later");
        return true;
    });
    engine::Absence absence{from, *until};
    absence.as_they_are = !options.from;
    if (options.sure) flags.set("--sure", *options.sure);
    absence.sure = flags.read("--sure", parse_sure).value_or(absence.sure);
    return absence;
}

}  // namespace

CLI::App* add_to(CLI::App& program, AwayOptions& options) {
    CLI::App* app = program.add_subcommand("away", "whether hoppers and drinkers hold while nobody is there");
    add_to(*app, options.farm, "--until");
    add_hatches(*app, options.farm);
    app->add_option("--from", options.from,
                    "all full then, such as 2027-04-23T06:00; absent: now, as the diary knows them")
        ->type_name("MOMENT");
    app->add_option("--until", options.until, "when somebody is back")->type_name("MOMENT");
    app->add_option("--sure", options.sure, "how sure is sure enough; 95 % when absent")->type_name("PERCENT");
    app->footer("Example: cropful away farm.toml --from 2027-04-23T06:00 --until 2027-04-25T18:00");
    return app;
}

Said run(AwayOptions const& options) {
    FarmOptions const& asked = options.farm;
    need_vessels(asked);
    auto absence = absence_of(options, now_of(asked));
    auto const question = read_question(asked, {.birds_matter = true, .kept = always_kept, .counted = absence.from});
    absence.hatches = question.window.hatches;
    auto const away = engine::away({question.farm, question.rations, question.diary}, absence);
    return asked.json ? Said(reports::away_json(away)) : reports::away_page(away, asked.sources);
}

}  // namespace cropful::commands
