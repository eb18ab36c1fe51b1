#include "cropful/reports/last_page.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/fills_part.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using engine::Fill;
using engine::HatchPlan;
using engine::Moment;
using quantities::Duration;
using quantities::Mass;
using quantities::Measures;
using quantities::print;
using quantities::Volume;

std::string until(Duration lasts, engine::Moment at, Measures measures) {
    return moment_words(at + lasts, measures) + " (" + print(lasts) + ")";
}

/// The safe end first, in plain words.
template <class Amount>
std::string lasts_words(Fill<Amount> const& fill, Measures measures) {
    auto const& lasts = fill.lasts;
    if (!lasts.p05) return "as long as they are kept";
    std::string words = "until " + until(*lasts.p05, fill.at, measures) + " 19 times in 20";
    if (lasts.p50) words += ", as often as not until " + until(*lasts.p50, fill.at, measures);
    return words;
}

/// When they were filled: as the diary says, or as if at the moment asked about.
template <class Amount>
std::string filled_words(Fill<Amount> const& fill, Moment asked, Measures measures) {
    bool const as_if = std::abs(quantities::in_days(asked - fill.at)) < 1e-6;
    return as_if ? ", as if filled " + moment_words(asked, measures) : ", filled " + moment_words(fill.at, measures);
}

/// What ends a fill sooner than the birds empty it: a change of feed, or the end of the flock.
std::string overtaken(HatchPlan const& hatch, Fill<Mass> const& fill) {
    auto const comes_first = [&](Duration age) {
        return age > fill.age && (!fill.empty_after || age < fill.age + *fill.empty_after);
    };
    for (domain::FeedingStep const& step : hatch.hatch.feeding) {
        if (step.from < hatch.hatch.until && comes_first(step.from)) {
            return "; but " + step.feed + " from " + (hatch.hatch.date + step.from).day();
        }
    }
    return comes_first(hatch.hatch.until) ? "; the birds leave " + (hatch.hatch.date + hatch.hatch.until).day() : "";
}

std::string hopper_words(HatchPlan const& hatch, Moment asked, Measures measures) {
    auto const& hoppers = *hatch.hoppers();
    auto const& fill = hoppers.fills.front();
    std::string const vessels = std::to_string(hoppers.count) + " x " + hoppers.key;
    std::string const holds = print_measured(fill.content, measures) + (hoppers.count > 1 ? " each" : "");
    return vessels + ", " + holds + filled_words(fill, asked, measures) + ": feed " + lasts_words(fill, measures) +
           overtaken(hatch, fill);
}

std::string drinker_words(HatchPlan const& hatch, Moment asked, Measures measures) {
    auto const& drinkers = *hatch.drinkers();
    auto const& fill = drinkers.fills.front();
    std::string words = std::to_string(drinkers.count) + " x " + drinkers.key + ", " +
                        print_measured(fill.content, measures) + (drinkers.count > 1 ? " each" : "") +
                        filled_words(fill, asked, measures) + ": water " + lasts_words(fill, measures);
    if (changed_before_dry(fill)) {
        words += "; but change it after " + print(*fill.change_after) + ", " +
                 moment_words(fill.at + *fill.change_after, measures);
    }
    return words;
}

template <class Amount>
bool filled(engine::Vessels<Amount> const* vessels) {
    return vessels && !vessels->fills.empty();
}

Page lasting_hatch(HatchPlan const& hatch, Measures measures) {
    Duration const age = first_age(hatch);
    std::string birds;
    if (filled(hatch.hoppers())) birds = quantities::print(hatch.hoppers()->fills.front().birds);
    if (birds.empty() && filled(hatch.drinkers())) {
        birds = quantities::print(hatch.drinkers()->fills.front().birds);
    }
    Page page = wrap(hatch.hatch.name + ": " + (birds.empty() ? "" : birds + " ") + hatch.kind_title + ", " +
                         quantities::print_age(age),
                     "", "  ");
    if (filled(hatch.hoppers())) page += wrap(hopper_words(hatch, hatch.hatch.date + age, measures), "  ", "    ");
    if (filled(hatch.drinkers())) page += wrap(drinker_words(hatch, hatch.hatch.date + age, measures), "  ", "    ");
    if (!filled(hatch.hoppers()) && !filled(hatch.drinkers()))
        page += wrap("no hopper and no drinker are named", "  ", "    ");
    return page;
}

struct Vessel {
    std::string hatch, name;
    Duration lasts;  // until it is empty, to be sure, or due to be changed
};

/// Those that empty or are changed, the first to be seen to first.
std::vector<Vessel> in_order(engine::Plan const& plan) {
    std::vector<Vessel> all;
    for (HatchPlan const& hatch : plan.hatches) {
        if (filled(hatch.hoppers())) {
            auto const& lasts = hatch.hoppers()->fills.front().lasts.p05;
            if (lasts) all.push_back({hatch.hatch.name, hatch.hoppers()->key, *lasts});
        }
        if (filled(hatch.drinkers())) {
            auto const& fill = hatch.drinkers()->fills.front();
            auto const& lasts = changed_before_dry(fill) ? fill.change_after : fill.lasts.p05;
            if (lasts) all.push_back({hatch.hatch.name, hatch.drinkers()->key, *lasts});
        }
    }
    std::stable_sort(all.begin(), all.end(), [](Vessel const& a, Vessel const& b) { return a.lasts < b.lasts; });
    return all;
}

/// A bar for each of several vessels.
Page vessels_picture(engine::Plan const& plan) {
    Table table({Align::left, Align::left, Align::right}, 2);
    table.head({"first to see to", "", "within"});
    auto const vessels = in_order(plan);
    for (Vessel const& one : vessels) {
        table.add({one.hatch, one.name, print(one.lasts)}, quantities::in_days(one.lasts));
    }
    return vessels.size() > 1 ? Picture{table} : Page();
}

}  // namespace

Page last_page(engine::Plan const& plan, std::optional<engine::Moment> at, Sources sources) {
    Measures const measures = plan.farm.measures;
    Page page;
    if (!plan.farm.name.empty()) {
        std::string const when = at ? moment_and_year(*at, measures) : "";
        page = both_ends(plan.farm.name, when) + Blank();
    }
    Page const alarms = alarms_part(plan.alarms, measures);
    if (!alarms.empty()) page += alarms + Blank();
    for (HatchPlan const& hatch : plan.hatches) page += lasting_hatch(hatch, measures);
    page += vessels_picture(plan) + spaced(learned_part(plan.learned, measures));
    page += Blank() + wrap("Go by the first hour: 1 flock in 20 is empty sooner. Hours are rounded down.");
    return page + notes_part(plan, sources);
}

}  // namespace cropful::reports
