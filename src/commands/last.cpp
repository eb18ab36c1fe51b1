#include "cropful/commands/last.hpp"

#include <algorithm>

#include <CLI/CLI.hpp>

#include "cropful/commands/clock.hpp"
#include "cropful/reports/last_page.hpp"
#include "cropful/reports/plan_csv.hpp"
#include "cropful/reports/plan_json.hpp"

namespace cropful::commands {

namespace {

constexpr auto kept_for_a_fill = quantities::days(42);  // beyond the life of any fill, where --until is silent

/// Now, when birds are in the barn; else nothing, and each hatch answers for its start.
std::optional<domain::Moment> now_if_planned(domain::Farm const& farm, domain::Moment moment) {
    auto const started = [&](domain::Hatch const& hatch) { return hatch.date + hatch.first_age <= moment; };
    auto const over = [&](domain::Hatch const& hatch) { return hatch.date + hatch.until <= moment; };
    bool const any_now = std::any_of(farm.hatches.begin(), farm.hatches.end(),
                                     [&](domain::Hatch const& hatch) { return started(hatch) && !over(hatch); });
    return any_now ? std::optional(moment) : std::nullopt;
}

/// Birds told by flags were not there before they were counted.
void check_moment(domain::Moment on, domain::Hatch const& hatch) {
    auto const counted = hatch.date + hatch.first_age;
    if (on >= counted) return;
    throw BadInput(in_quotes(on.iso()), "a moment from " + counted.iso() + " on, when the birds are counted",
                   {.file = "", .line = 0, .key = "--on"});
}

}  // namespace

CLI::App* add_to(CLI::App& program, LastOptions& options) {
    CLI::App* app = program.add_subcommand("last", "how long full hoppers and drinkers last");
    add_to(*app, options.farm);
    add_csv(*app, options.farm);
    add_hatches(*app, options.farm);
    app->add_option("--on", options.on, "full at, such as 2027-04-20T05:00; absent: now")->type_name("MOMENT");
    app->footer("Example: cropful last --kind bobwhite --birds 90 --age \"3 d\" --hopper \"12 L\"");
    return app;
}

Said run(LastOptions const& options) {
    FarmOptions const& asked = options.farm;
    need_vessels(asked);
    auto const on = read_moment(options.on, "--on");
    auto [farm, rations, diary, window] =
        read_question(asked, {.birds_matter = true, .kept = kept_for_a_fill, .counted = now_of(asked)});
    if (on && !asked.file) check_moment(*on, farm.hatches.front());
    if (on) window.from = on;
    if (!on && asked.file) window.now = window.from = now_if_planned(farm, now_of(asked));
    if (window.from) window.until = *window.from + quantities::days(1);  // what is judged and said is about now
    auto const plan = engine::make_plan(farm, rations, window, diary, engine::NeedScale::as_printed,
                                        {.full_now = true, .shopping = false, .amounts = false});
    if (asked.json) return reports::last_json(plan, window.from);
    if (asked.csv) return reports::last_csv(plan);
    return reports::last_page(plan, window.from, asked.sources);
}

}  // namespace cropful::commands
