#include "cropful/engine/sheet.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/assumptions.hpp"
#include "engine/bags.hpp"
#include "engine/caution_list.hpp"
#include "engine/check_extras.hpp"
#include "engine/hatch_model.hpp"
#include "engine/refills.hpp"
#include "engine/well.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr Duration listed_for = days(14);  // on pages to hang up, from the first that is to be done

/// `from`, every day after it, and `to`.
std::vector<Duration> daily(Duration from, Duration to) {
    std::vector<Duration> ages;
    for (int day = 0; from + days(day) + instant < to; ++day) ages.push_back(from + days(day));
    ages.push_back(to);
    return ages;
}

std::vector<HeadsAt> heads(Flock const& flock, Ages ages) {
    std::vector<Duration> at = daily(ages.from, ages.to);
    for (double const jump : flock.jumps()) {
        if (!(days(jump) > ages.from && days(jump) < ages.to)) continue;
        at.push_back(days(jump) - instant);
        at.push_back(days(jump));
    }
    std::sort(at.begin(), at.end());
    std::vector<HeadsAt> course;
    for (Duration const& age : at) {
        if (course.empty() || course.back().age < age) course.push_back({age, flock.alive(age)});
    }
    return course;
}

std::vector<DayFeed> feed_by_day(BandedUsage<Mass> const& feed, Ages ages) {
    std::vector<DayFeed> course;
    for (Duration age = ages.from; course.empty() || age + days(1) <= ages.to + instant; age = age + days(1)) {
        Duration const end = age + days(1);
        course.push_back({age, feed.central.between(age, end), feed.band(age, end)});
    }
    return course;
}

std::vector<ProteinAt> protein(std::vector<Check> const& checks, Intake const& intake) {
    std::vector<ProteinAt> course;
    for (Check const& check : checks) {
        if (check.nutrient != "protein") continue;
        for (Duration const& age : daily(check.from, check.to - instant)) {
            DailyProtein const one = daily_protein(check, intake, age);
            course.push_back({age, one.given, one.need});
        }
    }
    return course;
}

std::vector<BroodingRow> warmth(Brooding const& brooding, Ages ages) {
    std::vector<BroodingRow> rows = brooding.rows;
    std::erase_if(rows, [&](BroodingRow const& row) {
        return !(days(row.first_day - 1) < ages.to) || !(days(row.last_day) > ages.from);
    });
    return rows;
}

std::vector<RoomNeeded> room(Space const& space, Flock const& flock, Ages ages) {
    std::vector<RoomNeeded> rows;
    for (std::size_t i = 0; i < space.rows.size(); ++i) {
        SpaceRow row = space.rows[i];
        bool const over = i + 1 < space.rows.size() && space.rows[i + 1].from <= ages.from;
        if (over || !(row.from < ages.to)) continue;
        row.from = std::max(row.from, ages.from);
        rows.push_back(room_for(space, row, flock.alive(row.from)));
    }
    return rows;
}

std::vector<std::optional<int>> bags(HatchPlan const& part, domain::Farm const& farm) {
    std::vector<std::optional<int>> counts;
    for (FeedNeed const& need : part.feeds) {
        auto const& bag = farm.feeds.at(need.feed).bag;
        counts.push_back(bag ? std::optional(whole(ratio(need.band.p95 / *bag))) : std::nullopt);
    }
    return counts;
}

std::vector<Caution> cautions_of(HatchPlan const& part, Plan const& plan, Rations const& rations) {
    CautionList list;
    well_cautions(list, plan, rations);
    feed_cautions(list, plan, part, rations);
    drug_cautions(list, plan, part, rations);
    withdrawal_cautions(list, plan, part);
    water_drug_cautions(list, plan, part, rations);
    hatch_water_cautions(list, plan, part);
    water_cautions(list, plan, part);
    stale_feed_cautions(list, {part});
    return list.all();
}

HatchSheet hatch_sheet(HatchPlan const& part, Plan const& plan, Season const& season) {
    auto const named = [&](domain::Hatch const& hatch) { return hatch.name == part.hatch.name; };
    auto const& hatches = season.farm().hatches;
    auto const hatch = std::find_if(hatches.begin(), hatches.end(), named);
    HatchModel const& model = season.hatch(static_cast<std::size_t>(hatch - hatches.begin()));
    Kind const& kind = model.kind();
    Ages const ages{part.feeds.front().from, part.feeds.back().to};
    return {.heads = heads(model.flock(), ages),
            .days = feed_by_day(model.feed_from(ages.from), ages),
            .protein = protein(part.checks, model.intake()),
            .warmth = warmth(kind.brooding, ages),
            .room = room(kind.space, model.flock(), ages),
            .room_note = kind.space.note,
            .bags = bags(part, plan.farm),
            .cautions = cautions_of(part, plan, season.rations())};
}

/// What the sheet says beyond the plan, each with where it comes from.
std::vector<Assumption> assumptions_of(Sheet const& sheet, Rations const& rations) {
    AssumptionList list;
    list.all = sheet.plan.assumptions;
    for (HatchPlan const& part : sheet.plan.hatches) {
        Kind const& kind = rations.kinds.at(part.hatch.kind);
        list.add({.id = "warmth", .with = {{"kind", kind.title}}, .source = kind.brooding.source});
        list.add({.id = "room", .with = {{"kind", kind.title}}, .source = kind.space.source});
    }
    for (Sign const& sign : sheet.advice.signs) {
        list.add({.id = "signs", .with = {{"sign", sign.title}}, .source = sign.source});
    }
    for (LampRule const& rule : sheet.advice.lamp) {
        list.add({.id = "lamps", .with = {{"rule", rule.text}}, .source = rule.source});
    }
    return list.all;
}

}  // namespace

RoomNeeded room_for(Space const& space, SpaceRow const& row, Heads birds) {
    double const count = in_birds(birds);
    bool const day_olds = row.from < days(1);
    return {.from = row.from,
            .birds = birds,
            .birds_per_square_foot = row.birds_per_square_foot,
            .feeder_inches_per_bird = row.feeder_inches_per_bird,
            .floor_square_feet = count / row.birds_per_square_foot,
            .feeder_feet = count * row.feeder_inches_per_bird / 12,
            .water_trough_feet = count / space.birds_per_foot_of_water_trough,
            .founts = day_olds ? std::optional(whole(3 * count / space.day_olds_per_three_founts)) : std::nullopt};
}

Sheet make_sheet(Season const& season, BrooderAdvice advice, Window window, Progress const& progress) {
    Rations const& rations = season.rations();
    Agenda agenda = make_agenda(season, window, progress);
    Sheet sheet{std::move(agenda.plan), {}, std::move(advice), {}, {}};
    for (HatchPlan const& part : sheet.plan.hatches) sheet.hatches.push_back(hatch_sheet(part, sheet.plan, season));
    sheet.assumptions = assumptions_of(sheet, rations);
    sheet.cautions = sheet.plan.cautions;
    std::set<std::string> of_hatches;  // one said of several hatches at once stands on each one's own page
    for (HatchSheet const& hatch : sheet.hatches) {
        for (Caution const& caution : hatch.cautions) of_hatches.insert(caution.id);
    }
    auto const at_home = [](Task const& task) { return task.work != Work::fetch; };
    auto const first = ranges::find_if(agenda.tasks, at_home);
    if (first != agenda.tasks.end()) sheet.until = first->at + listed_for;
    for (Task& task : agenda.tasks) {
        bool const soon = sheet.until && task.at < *sheet.until;
        if (soon || !at_home(task)) sheet.tasks.push_back(std::move(task));
    }
    for (HatchPlan const& part : sheet.plan.hatches) {
        sheet.warmth[part.hatch.kind] = rations.kinds.at(part.hatch.kind).brooding.rows;
    }
    std::erase_if(sheet.cautions, [&](Caution const& caution) { return of_hatches.contains(caution.id); });
    return sheet;
}

}  // namespace cropful::engine
