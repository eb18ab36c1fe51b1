#include "cropful/engine/plan.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/fault.hpp"
#include "engine/assumptions.hpp"
#include "engine/bags.hpp"
#include "engine/cautions.hpp"
#include "engine/check_extras.hpp"
#include "engine/course.hpp"
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
    return ages.from < ages.to ? std::optional(ages) : std::nullopt;
}

/// Over stretches no longer than this each world keeps one factor of use.
constexpr Duration longest_piece = days(7);

/// What each feed is needed for in every world, in kg, hatch by hatch and in all.
using WorldNeeds = std::map<std::string, std::vector<double>>;

Band<Mass> in_mass(Band<double> const& band) { return {kilograms(band.p05), kilograms(band.p50), kilograms(band.p95)}; }

/// What the flock eats on each calendar day between two ages, raised alike to add up to `whole`.
std::vector<Mass> by_days(domain::Hatch const& hatch, Usage<Mass> const& usage, Duration from, Duration to,
                          Mass whole) {
    Mass const central = usage.between(from, to);
    double const raised = central > kilograms(0) ? ratio(whole / central) : 0;
    std::vector<Mass> all;
    Duration midnight = Moment((hatch.date + from).date()) - hatch.date;
    for (; midnight < to; midnight += days(1)) {
        Duration const start = std::max(from, midnight), end = std::min(to, midnight + days(1));
        all.push_back(start < end ? usage.between(start, end) * raised : kilograms(0));
    }
    return all;
}

void add_feed_needs(HatchPlan& plan, WorldNeeds& needs, Flock const& flock, Intake const& intake,
                    Usage<Mass> const& usage, Spread const& spread, Sway const& sway, Ages ages) {
    domain::Hatch const& hatch = plan.hatch;
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        Duration const from = std::max(ages.from, hatch.feeding[i].from);
        Duration const to = std::min(ages.to, fed_until(hatch, i));
        if (!(from < to)) continue;
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
                              by_days(hatch, usage, from, to, amounts.p95)});
    }
}

std::vector<Week> weeks(Flock const& flock, Usage<Mass> const& feed, Usage<Volume> const& water, Ages ages) {
    std::vector<Week> rows;
    for (Duration age = ages.from; age < ages.to;) {
        int const number = static_cast<int>(std::floor(in_days(age) / 7)) + 1;
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

HatchPlan plan_hatch(Judged& judged, std::size_t number, Rations const& rations, Ages ages, NeedScale scale) {
    domain::Farm const& farm = judged.lessons.farm;
    Belief const& belief = judged.lessons.belief;
    domain::Hatch const& hatch = farm.hatches[number];
    Kind const& kind = rations.kinds.at(hatch.kind);
    Flock const flock(hatch, kind);
    Intake const intake(farm, hatch, kind, nature(belief, number));
    Spread const spread(hatch, kind, intake, belief, number);
    Sway const sway(spread, belief, judged.draws, number);
    domain::Hopper const* hopper = find(farm.hoppers, hatch.hopper);
    domain::Drinker const* drinker = find(farm.drinkers, hatch.drinker);
    domain::Supplement const* supplement = find(farm.supplements, hatch.supplement);
    auto const feed = banded_feed(flock, intake, hopper ? hopper->extra_waste : 0, spread, ages);
    auto const water = banded_water(flock, intake, drinker ? drinker->spill : 0, spread, ages);

    HatchPlan plan{hatch, kind.title, flock.counted(), {}, {}, {}, {}, {}, {}};
    add_feed_needs(plan, judged.needs, flock, intake, feed.central, spread, sway, ages);
    if (hopper) plan.hoppers = hopper_fills(hatch, *hopper, feed, flock, intake, rations, ages);
    if (drinker) plan.drinkers = drinker_fills(hatch, *drinker, supplement, water, flock, ages);
    if (supplement) plan.mix = course(hatch, *supplement, drinker, water.central, ages.from, ages.to);
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
               NeedScale scale) {
    Lessons lessons = learn(farm, rations, diary);
    Draws draws(lessons.belief);
    Judged judged{std::move(lessons), std::move(draws), {}};
    Plan plan;
    plan.farm = judged.lessons.farm;
    plan.need_scale = scale;
    plan.learned = judged.lessons.learned;
    for (std::size_t i = 0; i < farm.hatches.size(); ++i) {
        if (auto const ages = ages_in(farm.hatches[i], window)) {
            plan.hatches.push_back(plan_hatch(judged, i, rations, *ages, scale));
        }
    }
    std::vector<std::string> names;
    for (HatchPlan const& part : plan.hatches) names.push_back(part.hatch.name);
    plan.alarms = judged.lessons.alarms(names, window.from);
    if (plan.hatches.empty()) throw NoAnswer("no hatch has birds in the time asked for");
    std::map<std::string, Band<Mass>> needs;
    for (auto& [feed, worlds] : judged.needs) needs[feed] = in_mass(band(worlds));
    plan.placement = place(plan.farm, rations);
    plan.readying = readying(plan.farm, plan.placement, window);
    count_bags(plan, needs);
    plan.assumptions = assumptions(plan, rations);
    plan.cautions = cautions(plan, rations);
    for (Caution const& caution : judged.lessons.cautions()) plan.cautions.push_back(caution);
    return plan;
}

}  // namespace cropful::engine
