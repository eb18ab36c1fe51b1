#include "cropful/engine/plan.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/assumptions.hpp"
#include "engine/bags.hpp"
#include "engine/calendar_days.hpp"
#include "engine/cautions.hpp"
#include "engine/check_extras.hpp"
#include "engine/course.hpp"
#include "engine/draws.hpp"
#include "engine/keeping.hpp"
#include "engine/quantile.hpp"
#include "engine/refills.hpp"
#include "engine/worlds.hpp"

namespace cropful::engine {

namespace {

/// The part of a hatch's life that lies in the window; empty when none does.
std::optional<Ages> ages_in(domain::Hatch const& hatch, Window const& window) {
    Ages ages{hatch.first_age, hatch.until};
    if (window.from) ages.from = std::max(ages.from, *window.from - hatch.date);
    if (window.until) ages.to = std::min(ages.to, *window.until - hatch.date);
    return ages.from + instant < ages.to ? std::optional(ages) : std::nullopt;
}

/// Over stretches no longer than this each world keeps one factor of use.
constexpr Duration longest_piece = days(7);

/// More than any farm is planned for at once; it would take minutes and gigabytes.
constexpr double most_hatch_days = 400'000;
constexpr std::size_t most_removals = 20'000;
constexpr std::size_t most_deeds = 100'000;

/// Throws NoAnswer for a farm whose hatches are kept for more days together, or thinned out more often, than are worked
/// out.
void refuse_endless(domain::Farm const& farm, Window const& window) {
    double sum = 0;
    std::size_t removals = 0;
    for (domain::Hatch const& hatch : farm.hatches) {
        removals += hatch.removed.size();
        if (auto const ages = ages_in(hatch, window)) sum += in_days(ages->to - ages->from);
    }
    if (removals > most_removals) {
        throw NoAnswer("the hatches have " + number(static_cast<double>(removals), 0) + " removals together; at most " +
                       number(most_removals, 0) + " removals are worked out at once: split the file");
    }
    if (sum <= most_hatch_days) return;
    throw NoAnswer("the " + number(static_cast<double>(farm.hatches.size()), 0) + " hatches are kept for " +
                   number(sum, 0) + " days together, and at most " + number(most_hatch_days, 0) +
                   " are worked out at once: check every, times and until, or split the file");
}

std::size_t deeds(HatchPlan const& plan) {
    return (plan.hoppers ? plan.hoppers->fills.size() : 0) + (plan.drinkers ? plan.drinkers->fills.size() : 0) +
           (plan.mix ? plan.mix->batches.size() : 0);
}

/// Throws NoAnswer for fills and batches that add up to more than anybody can do or read.
void refuse_endless(Plan const& plan) {
    std::size_t sum = 0;
    for (HatchPlan const& hatch : plan.hatches) sum += deeds(hatch);
    if (sum <= most_deeds) return;
    throw NoAnswer("hoppers and drinkers would be filled and solutions mixed more than " +
                   number(static_cast<double>(most_deeds), 0) +
                   " times in all: check their sizes, change_every and keeps, or ask for a part with --from and --to");
}

/// What each feed is needed for in every world, in kg, hatch by hatch and in all.
using WorldNeeds = std::map<std::string, std::vector<double>>;

Band<Mass> in_mass(Band<double> const& band) { return {kilograms(band.p05), kilograms(band.p50), kilograms(band.p95)}; }

/// What the flock eats on each calendar day between two ages, raised alike to add up to `whole`.
std::vector<Mass> by_days(domain::Hatch const& hatch, Usage<Mass> const& usage, Duration from, Duration to,
                          Mass whole) {
    Mass const central = usage.between(from, to);
    double const raised = central > kilograms(0) ? ratio(whole / central) : 0;
    std::vector<Mass> all;
    for (CalendarDay const& day : calendar_days(hatch, from, to)) {
        all.push_back(usage.between(day.from, day.to) * raised);
    }
    return all;
}

void add_feed_needs(HatchPlan& plan, WorldNeeds& needs, Flock const& flock, Intake const& intake,
                    Usage<Mass> const& usage, Spread const& spread, Sway const& sway, Ages ages) {
    domain::Hatch const& hatch = plan.hatch;
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        Duration const from = std::max(ages.from, hatch.feeding[i].from);
        Duration const to = std::min(ages.to, fed_until(hatch, i));
        if (!(from + instant < to)) continue;
        auto worlds = world_totals(usage, pieces(flock, intake, from, to, longest_piece), spread, sway);
        auto& all = needs[hatch.feeding[i].feed];
        all.resize(worlds.size());
        std::transform(all.begin(), all.end(), worlds.begin(), all.begin(), std::plus<>());
        Band<Mass> const amounts = in_mass(band(worlds));
        plan.feeds.push_back({hatch.feeding[i].feed,
                              from,
                              to,
                              usage.between(from, to),
                              amounts,
                              0,
                              {},
                              (hatch.date + from).calendar_day(),
                              by_days(hatch, usage, from, to, amounts.p95)});
    }
}

std::vector<Week> weeks(Flock const& flock, Usage<Mass> const& feed, Usage<Volume> const& water, Ages ages) {
    std::vector<Week> rows;
    for (Duration age = ages.from; age + instant < ages.to;) {
        int const number = whole_number(std::floor(in_days(age) / 7)) + 1;
        Duration const day_end = age + days(1);
        rows.push_back({number, age, flock.alive(age), feed.between(age, day_end), water.between(age, day_end)});
        age = days(7.0 * number);
    }
    return rows;
}

std::vector<Check> checks_for(HatchPlan const& plan, domain::Farm const& farm, Rations const& rations,
                              Intake const& intake, NeedScale scale) {
    NeedsTable const& needs = rations.needs.at(rations.kinds.at(plan.hatch.kind).needs_table);
    std::vector<Check> all;
    for (FeedNeed const& part : plan.feeds) {
        domain::Feed const& feed = farm.feeds.at(part.feed);
        auto some = check(feed, needs, part.from, part.to, plan.hatch.laying_from, scale);
        add_daily_protein(some, intake);
        mark_excess(some, rations.limits, plan.hatch.laying_from);
        add_excess_without_need(some, feed, rations.limits);
        std::move(some.begin(), some.end(), std::back_inserter(all));
    }
    return all;
}

template <class Map>
auto const* find(Map const& map, std::optional<std::string> const& key) {
    return key ? &map.at(*key) : nullptr;
}

/// A farm with what its diary taught, and the worlds to judge it in.
struct Judged {
    Lessons lessons;
    Draws draws;
    WorldNeeds needs;
};

/// Until what age a hatch's use must be known: fills last past the end of a plan.
Duration used_until(domain::Supplement const* supplement, Ages ages, Wanted const& wanted) {
    if (wanted.hoppers || wanted.drinkers) return ages.to + look_ahead;
    if (wanted.shopping || !wanted.mixes) return ages.to;
    return supplement ? std::min(ages.to, course_ends(*supplement)) : ages.from;
}

/// What the labels of a hatch's feeds say of its ages.
HatchPlan judge_labels(Judged& judged, std::size_t number, Rations const& rations, Ages ages, NeedScale scale) {
    domain::Farm const& farm = judged.lessons.farm;
    domain::Hatch const& hatch = farm.hatches[number];
    Kind const& kind = rations.kinds.at(hatch.kind);
    Intake const intake(farm, hatch, kind, nature(judged.lessons.belief, number));
    HatchPlan plan{hatch, kind.title, chicks(hatch, kind), {}, {}, {}, {}, {}, {}};
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        Duration const from = std::max(ages.from, hatch.feeding[i].from);
        Duration const to = std::min(ages.to, fed_until(hatch, i));
        if (from < to) plan.feeds.push_back({hatch.feeding[i].feed, from, to, kilograms(0), {}, 0, {}, {}});
    }
    plan.checks = checks_for(plan, farm, rations, intake, scale);
    return plan;
}

HatchPlan plan_hatch(Judged& judged, std::size_t number, Rations const& rations, Ages ages, NeedScale scale,
                     Wanted const& wanted) {
    if (!wanted.use) return judge_labels(judged, number, rations, ages, scale);
    domain::Farm const& farm = judged.lessons.farm;
    Belief const& belief = judged.lessons.belief;
    domain::Hatch const& hatch = farm.hatches[number];
    Kind const& kind = rations.kinds.at(hatch.kind);
    domain::Supplement const* supplement = find(farm.supplements, hatch.supplement);
    need_laying_rate(hatch, kind, used_until(supplement, ages, wanted));
    Flock const flock(hatch, kind);
    Intake const intake(farm, hatch, kind, nature(belief, number));
    Spread const spread(hatch, kind, intake);
    Sway const sway(spread, belief, judged.draws, number);
    FlockInDoubt const one{hatch, kind, intake, belief, number, ages};
    domain::Hopper const* hopper = find(farm.hoppers, hatch.hopper);
    domain::Drinker const* drinker = find(farm.drinkers, hatch.drinker);
    auto const feed = banded_feed(one, hopper ? hopper->extra_waste : 0, Spread::density_cv);
    auto const water = banded_water(one, drinker ? drinker->spill : 0);

    HatchPlan plan{hatch, kind.title, flock.counted(), {}, {}, {}, {}, {}, {}};
    add_feed_needs(plan, judged.needs, flock, intake, feed.central, spread, sway, ages);
    if (hopper && wanted.hoppers) plan.hoppers = hopper_fills(hatch, *hopper, feed, flock, intake, rations, ages);
    if (drinker && wanted.drinkers) plan.drinkers = drinker_fills(hatch, *drinker, supplement, water, flock, ages);
    if (supplement && wanted.mixes) plan.mix = course(hatch, *supplement, drinker, water, ages.from, ages.to);
    plan.checks = checks_for(plan, farm, rations, intake, scale);
    plan.weeks = weeks(flock, feed.central, water.central, ages);
    plan.days = days_of(hatch, flock, feed.central, water.central, ages);
    plan.keeping = keeping_of(hatch, flock, feed.central);
    return plan;
}

}  // namespace

Duration fed_until(domain::Hatch const& hatch, std::size_t step) {
    bool const last = step + 1 == hatch.feeding.size();
    return last ? hatch.until : std::min(hatch.until, hatch.feeding[step + 1].from);
}

Plan make_plan(domain::Farm const& farm, Rations const& rations, Window window, domain::Diary const& diary,
               NeedScale scale, Wanted wanted) {
    Lessons lessons = learn(farm, rations, diary);
    refuse_endless(farm, window);
    Draws draws(lessons.belief, worlds_for(lessons.belief.flocks()));
    Judged judged{std::move(lessons), std::move(draws), {}};
    Plan plan;
    plan.farm = judged.lessons.farm;
    plan.need_scale = scale;
    plan.learned = judged.lessons.learned;
    for (std::size_t i = 0; i < farm.hatches.size(); ++i) {
        if (auto const ages = ages_in(farm.hatches[i], window)) {
            plan.hatches.push_back(plan_hatch(judged, i, rations, *ages, scale, wanted));
            refuse_endless(plan);
        }
    }
    std::vector<std::string> names;
    for (HatchPlan const& part : plan.hatches) names.push_back(part.hatch.name);
    plan.alarms = judged.lessons.alarms(names, window.from);
    if (plan.hatches.empty()) throw NoAnswer("no hatch has birds in the time asked for");
    std::map<std::string, Band<Mass>> needs;
    for (auto& [feed, worlds] : judged.needs) needs[feed] = in_mass(band(worlds));
    if (wanted.use) plan.placement = place(plan.farm, rations);
    if (wanted.use && wanted.shopping) {
        plan.readying = readying(plan.farm, plan.placement, window);
        count_bags(plan, needs);
    }
    plan.assumptions = assumptions(plan, rations);
    plan.cautions = cautions(plan, rations);
    for (Caution const& caution : judged.lessons.cautions()) plan.cautions.push_back(caution);
    return plan;
}

}  // namespace cropful::engine
