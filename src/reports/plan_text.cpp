#include "cropful/reports/plan_text.hpp"

#include "cropful/quantities/print.hpp"
#include "cropful/reports/buy_text.hpp"
#include "cropful/reports/check_text.hpp"
#include "cropful/reports/fills_text.hpp"
#include "cropful/reports/learned_text.hpp"
#include "cropful/reports/mix_text.hpp"
#include "cropful/reports/page.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using engine::HatchPlan;
using quantities::Measures;
using quantities::print;

std::string feeds_text(HatchPlan const& hatch, Measures measures) {
    Table table({Align::left, Align::left, Align::left, Align::right, Align::right}, 4);
    table.head({"feed", "ages", "from", "sure with", "usually"});
    for (engine::FeedNeed const& feed : hatch.feeds) {
        table.add({feed.feed, ages_words(feed.from, feed.to), (hatch.hatch.date + feed.from).day(),
                   print(feed.band.p95, measures), print(feed.amount, measures)});
    }
    return "  FEED\n" + table.text();
}

std::string weeks_text(HatchPlan const& hatch, Measures measures) {
    Table table({Align::left, Align::left, Align::right, Align::right, Align::right}, 4);
    table.head({"week", "from", "birds", "feed a day", "water a day"});
    for (engine::Week const& week : hatch.weeks) {
        table.add({std::to_string(week.number), (hatch.hatch.date + week.from).day(), quantities::print(week.birds),
                   print(week.feed, measures), print(week.water, measures)});
    }
    return "  EACH DAY, on the first day of every week\n" + table.text();
}

std::string removals_text(HatchPlan const& hatch) {
    std::string text;
    for (std::string const& words : removals_words(hatch)) text += "  OUT   " + words + "\n";
    return text;
}

std::string planned_hatch(HatchPlan const& hatch, domain::Farm const& farm, Detail detail) {
    auto const measures = farm.measures;
    bool const everything = detail == Detail::everything;
    std::string const kept = ", kept to " + quantities::print_age(hatch.hatch.until) + " (" +
                             (hatch.hatch.date + hatch.hatch.until).day_year() + ")";
    return std::string(page_width, '-') + "\n" + wrap(hatch_words(hatch) + kept, "", "  ") +
           feeds_text(hatch, measures) + labels_text(hatch) + removals_text(hatch) +
           hoppers_text(hatch, measures, everything) + drinkers_text(hatch, measures, everything) +
           course_text(hatch, farm) + (everything ? weeks_text(hatch, measures) : "");
}

}  // namespace

std::string plan_text(engine::Plan const& plan, Detail detail, Sources sources) {
    auto const measures = plan.farm.measures;
    std::string text = page_title(plan);
    std::string const alarms = alarms_text(plan.alarms, measures), learned = learned_text(plan.learned, measures);
    if (!alarms.empty()) text += "\n" + alarms;
    text += purchases_text(plan);
    if (!learned.empty()) text += "\n" + learned;
    text += "\n";
    for (HatchPlan const& hatch : plan.hatches) text += planned_hatch(hatch, plan.farm, detail);
    text += "\n" + wrap(how_sure_words());
    return text + notes_text(plan, sources);
}

}  // namespace cropful::reports
