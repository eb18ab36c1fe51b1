#include "cropful/reports/plan_page.hpp"

#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/buy_page.hpp"
#include "cropful/reports/check_page.hpp"
#include "cropful/reports/fills_part.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/mix_page.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using engine::HatchPlan;
using quantities::Measures;
using quantities::print;

Page feeds_part(HatchPlan const& hatch, Measures measures) {
    Table table({Align::left, Align::left, Align::left, Align::right, Align::right}, 4);
    table.head({"feed", "ages", "from", "sure with", "usually"});
    for (engine::FeedNeed const& feed : hatch.feeds) {
        table.add({feed.feed, ages_words(feed.from, feed.to), (hatch.hatch.date + feed.from).day(),
                   print(feed.band.p95, measures), print(feed.amount, measures)});
    }
    return heading("FEED", "", 2) + table;
}

Page weeks_part(HatchPlan const& hatch, Measures measures) {
    Table table({Align::left, Align::left, Align::right, Align::right, Align::right}, 4);
    table.head({"week", "from", "birds", "feed a day", "water a day"});
    for (engine::Week const& week : hatch.weeks) {
        table.add({std::to_string(week.number), (hatch.hatch.date + week.from).day(), quantities::print(week.birds),
                   print(week.feed, measures), print(week.water, measures)});
    }
    return heading("EACH DAY", ", on the first day of every week", 2) + table;
}

Page removals_part(HatchPlan const& hatch) {
    Page page;
    for (std::string const& words : removals_words(hatch))
        page += wrap(words, "  " + strong("OUT") + "   ", "        ");
    return page;
}

constexpr quantities::Duration listed_for = quantities::days(14);

/// When the plan begins.
engine::Moment start_of(engine::Plan const& plan) {
    auto const begins = [](HatchPlan const& hatch) { return hatch.hatch.date + first_age(hatch); };
    return begins(std::ranges::min(plan.hatches, {}, begins));
}

Page planned_hatch(HatchPlan const& hatch, domain::Farm const& farm, std::optional<engine::Moment> before) {
    auto const measures = farm.measures;
    std::string const kept = ", kept to " + quantities::print_age(hatch.hatch.until) + " (" +
                             (hatch.hatch.date + hatch.hatch.until).day_year() + ")";
    return Rule() + wrap(hatch_words(hatch) + kept, "", "  ") + feeds_part(hatch, measures) + labels_part(hatch) +
           removals_part(hatch) + hoppers_part(hatch, measures, before) + drinkers_part(hatch, measures, before) +
           course_part(hatch, farm, before) + (before ? Page() : weeks_part(hatch, measures));
}

}  // namespace

Page plan_page(engine::Plan const& plan, Detail detail, Sources sources) {
    auto const measures = plan.farm.measures;
    Page page = page_title(plan) + spaced(alarms_part(plan.alarms, measures)) + purchases_part(plan) +
                spaced(learned_part(plan.learned, measures)) + Blank();
    std::optional<engine::Moment> before;
    if (detail == Detail::one_page) before = start_of(plan) + listed_for;
    auto const tended = [](HatchPlan const& hatch) {
        auto const vessels = [](engine::StagePlan const& stage) { return stage.hoppers || stage.drinkers; };
        return hatch.mix || std::ranges::any_of(hatch.stages, vessels);
    };
    if (before && std::ranges::any_of(plan.hatches, tended)) {
        page +=
            wrap("What to fill and stir in is listed for two weeks, to " + before->day() + "; --all lists all of it.");
    }
    for (HatchPlan const& hatch : plan.hatches) page += planned_hatch(hatch, plan.farm, before);
    page += spaced(wrap(how_sure_words()));
    bool const listed = sources == Sources::named || detail == Detail::everything;
    return page + (listed ? notes_part(plan, sources) : short_notes_part(plan));
}

}  // namespace cropful::reports
