// A farm file, to its plan as page, JSON and CSV, its sheets, its agenda and calendar.
#include "cropful/readers/farm.hpp"
#include "cropful/engine/agenda.hpp"
#include "cropful/engine/sheet.hpp"
#include "cropful/reports/calendar.hpp"
#include "cropful/reports/plan_csv.hpp"
#include "cropful/reports/plan_json.hpp"
#include "cropful/reports/plan_page.hpp"
#include "cropful/reports/setting.hpp"
#include "cropful/reports/sheet_html.hpp"
#include "fuzz.hpp"

using namespace cropful;

namespace {

/// Larger farms are planned as well, but not a thousand times a second.
bool is_small(domain::Farm const& farm) {
    double days = 0;
    std::size_t removals = 0;
    for (domain::Hatch const& hatch : farm.hatches) {
        days += quantities::in_days(hatch.until - hatch.first_age);
        removals += hatch.removed.size();
    }
    return days < 400 && removals < 20;
}

}  // namespace

void try_input(std::string_view text) {
    static readers::RationsReader const reader;
    auto const farm = readers::parse_farm(std::string(text), "farm.toml", reader);
    if (farm.hatches.empty() || !is_small(farm)) return;
    auto const rations = reader.load(farm);
    engine::Season const season(farm, rations, {}, 32);
    auto const agenda = engine::make_agenda(season, {});
    hold_harmless(reports::set(reports::plan_page(agenda.plan, reports::Detail::everything, reports::Sources::named)));
    hold(!reports::plan_json(agenda.plan).empty(), "a plan is printed");
    hold(!reports::plan_csv(agenda.plan).empty(), "and its table");
    reports::calendar(agenda, agenda.from, quantities::days(1.0 / 24));
    auto const sheet = engine::make_sheet(season, reader.brooder_advice());
    auto const html =
        reports::sheet_html(sheet, reports::Houses::together, reports::Charts::drawn, reports::Sources::named);
    hold(html.find("<script") == std::string::npos, "a sheet runs nothing");
}
