#include "cropful/reports/plan_page.hpp"

#include "cropful/domain/ranges.hpp"
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
    Table table({Align::left, Align::left, Align::left, Align::right, Align::right}, 2);
    table.head({strong("FEED"), "ages", "from", "sure with", "usually"});
    for (engine::FeedNeed const& feed : hatch.feeds) {
        table.add({feed.feed, ages_words(feed.from, feed.to), (hatch.hatch.date + feed.from).day(),
                   print(feed.band.p95, measures), print(feed.amount, measures)});
    }
    return table;
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
    auto const all = removals_words(hatch);
    return all.empty() ? Page() : wrap(join(all, "; "), "  " + strong("OUT") + "   ", "        ");
}

/// The stages whose vessels are filled after a moment, a line for all.
Page later_part(HatchPlan const& hatch, Measures /*measures*/, engine::Moment before) {
    std::vector<std::string> stages;
    for (engine::StagePlan const& stage : hatch.stages) {
        if (hatch.hatch.date + stage.from < before) continue;
        std::vector<std::string> vessels;
        if (stage.hoppers) vessels.push_back(std::to_string(stage.hoppers->count) + " x " + stage.hoppers->key);
        if (stage.drinkers) vessels.push_back(std::to_string(stage.drinkers->count) + " x " + stage.drinkers->key);
        std::string const house = house_words(stage);
        if (vessels.empty() && house.empty()) continue;
        stages.push_back((house.empty() ? "" : house + " ") + "from " + (hatch.hatch.date + stage.from).day() +
                         (vessels.empty() ? "" : " (" + join(vessels) + ")"));
    }
    return stages.empty() ? Page() : wrap(join(stages, ", "), "  " + strong("THEN") + "  ", "        ");
}

constexpr quantities::Duration listed_for = quantities::days(14);

/// When the plan begins.
engine::Moment start_of(engine::Plan const& plan) {
    auto const begins = [](HatchPlan const& hatch) { return hatch.hatch.date + first_age(hatch); };
    return begins(ranges::min(plan.hatches, begins));
}

/// When a plan that ends before the birds leave ends.
std::optional<engine::Moment> ends_early(engine::Plan const& plan) {
    std::optional<engine::Moment> end;
    for (HatchPlan const& hatch : plan.hatches) {
        if (hatch.feeds.back().to + quantities::days(1e-6) < hatch.hatch.until) {
            end = hatch.hatch.date + hatch.feeds.back().to;
        }
    }
    return end;
}

Page planned_hatch(HatchPlan const& hatch, domain::Farm const& farm, std::optional<engine::Moment> before) {
    auto const measures = farm.measures;
    std::string const kept = ", to " + (hatch.hatch.date + hatch.hatch.until).day();
    return Rule() + wrap(hatch_words(hatch) + kept, "", "  ") + feeds_part(hatch, measures) +
           labels_part(hatch, before.has_value()) + removals_part(hatch) +
           (before ? later_part(hatch, measures, *before) : Page()) + hoppers_part(hatch, measures, before) +
           drinkers_part(hatch, measures, before) + course_part(hatch, farm, before) +
           (before ? Page() : weeks_part(hatch, measures));
}

}  // namespace

Page plan_page(engine::Plan const& plan, Detail detail, Sources sources) {
    auto const measures = plan.farm.measures;
    Page page = page_title(plan) + spaced(alarms_part(plan.alarms, measures)) +
                purchases_part(plan, detail == Detail::everything) + spaced(learned_part(plan.learned, measures)) +
                Blank();
    std::optional<engine::Moment> before;
    if (detail == Detail::one_page) before = start_of(plan) + listed_for;
    auto const tended = [](HatchPlan const& hatch) {
        auto const vessels = [](engine::StagePlan const& stage) { return stage.hoppers || stage.drinkers; };
        return (hatch.mix() && !hatch.mix()->batches.empty()) || ranges::any_of(hatch.stages, vessels);
    };
    if (before && ranges::any_of(plan.hatches, tended)) {
        page += wrap("FILL, WATER and STIR are listed for two weeks, to " + before->day() + "; --all lists all.");
    }
    auto const end = ends_early(plan);
    if (end && ranges::any_of(plan.hatches, tended)) {
        page += wrap("This plan ends on " + end->day() +
                     ": what is put in is for the time till then. Who goes on fills "
                     "as `cropful today` says.");
    }
    for (HatchPlan const& hatch : plan.hatches) page += planned_hatch(hatch, plan.farm, before);
    std::string const short_words =
        "\"Sure\" is 19 times in 20, \"usually\" as often as not. Look in on hoppers and drinkers every day all the "
        "same.";
    page += spaced(wrap(detail == Detail::everything ? how_sure_words() : short_words));
    return page + notes_part(plan, sources);
}

}  // namespace cropful::reports
