#include "cropful/engine/plan.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/fault.hpp"
#include "engine/assumptions.hpp"
#include "engine/bags.hpp"
#include "engine/cautions.hpp"
#include "engine/check_extras.hpp"
#include "engine/course.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

namespace {

struct Ages {
    Duration from;
    Duration to;
};

/// The part of a hatch's life that lies in the window; empty when none does.
std::optional<Ages> ages_in(domain::Hatch const& hatch, Window const& window) {
    Ages ages{hatch.first_age, hatch.until};
    if (window.from) ages.from = std::max(ages.from, *window.from - hatch.date);
    if (window.until) ages.to = std::min(ages.to, *window.until - hatch.date);
    return ages.from < ages.to ? std::optional(ages) : std::nullopt;
}

std::vector<FeedNeed> feed_needs(domain::Hatch const& hatch, Usage<Mass> const& usage, Ages ages) {
    std::vector<FeedNeed> needs;
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        Duration const from = std::max(ages.from, hatch.feeding[i].from);
        Duration const to = std::min(ages.to, fed_until(hatch, i));
        if (from < to) needs.push_back({hatch.feeding[i].feed, from, to, usage.between(from, to), 0, {}});
    }
    return needs;
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
        auto some = check(farm.feeds.at(part.feed), needs, part.from, part.to, plan.hatch.laying_from, scale);
        add_daily_protein(some, intake);
        mark_excess_calcium(some, rations.limits, plan.hatch.laying_from);
        std::move(some.begin(), some.end(), std::back_inserter(all));
    }
    return all;
}

template <class Map>
auto const* find(Map const& map, std::optional<std::string> const& key) {
    return key ? &map.at(*key) : nullptr;
}

HatchPlan plan_hatch(domain::Farm const& farm, domain::Hatch const& hatch, Rations const& rations, Ages ages,
                     NeedScale scale) {
    Kind const& kind = rations.kinds.at(hatch.kind);
    Flock const flock(hatch, kind);
    Intake const intake(farm, hatch, kind);
    domain::Hopper const* hopper = find(farm.hoppers, hatch.hopper);
    domain::Drinker const* drinker = find(farm.drinkers, hatch.drinker);
    domain::Supplement const* supplement = find(farm.supplements, hatch.supplement);
    auto const feed = feed_usage(flock, intake, hopper ? hopper->extra_waste : 0);
    auto const water = water_usage(flock, intake, drinker ? drinker->spill : 0);

    HatchPlan plan{hatch, kind.title, flock.counted(), feed_needs(hatch, feed, ages), {}, {}, {}, {}, {}};
    if (hopper) plan.hoppers = hopper_fills(hatch, *hopper, feed, flock, intake, rations, ages.from, ages.to);
    if (drinker) {
        plan.drinkers = drinker_fills(hatch, *drinker, supplement, water, flock, ages.from, ages.to);
    }
    if (supplement) plan.mix = course(hatch, *supplement, drinker, water, ages.from, ages.to);
    plan.checks = checks_for(plan, farm, rations, intake, scale);
    plan.weeks = weeks(flock, feed, water, ages);
    return plan;
}

}  // namespace

Plan make_plan(domain::Farm const& farm, Rations const& rations, Window window, NeedScale scale) {
    Plan plan;
    plan.farm = farm;
    plan.need_scale = scale;
    for (domain::Hatch const& hatch : farm.hatches) {
        if (auto const ages = ages_in(hatch, window))
            plan.hatches.push_back(plan_hatch(farm, hatch, rations, *ages, scale));
    }
    if (plan.hatches.empty()) throw NoAnswer("no hatch has birds in the time asked for");
    count_bags(plan);
    plan.assumptions = assumptions(plan, rations);
    plan.cautions = cautions(plan, rations);
    return plan;
}

}  // namespace cropful::engine
