#include "cropful/engine/away.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/assumptions.hpp"
#include "engine/away_cautions.hpp"
#include "engine/away_hatch.hpp"
#include "engine/errands.hpp"
#include "engine/hatch_model.hpp"
#include "engine/intake.hpp"
#include "engine/quantile.hpp"
#include "engine/refills.hpp"
#include "engine/rounding.hpp"
#include "engine/run_out.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

std::vector<Followed> follow_all(Season const& season, Absence const& absence) {
    std::vector<Followed> all;
    for (std::size_t i = 0; i < season.farm().hatches.size(); ++i) {
        domain::Hatch const& hatch = season.farm().hatches[i];
        if (!absence.hatches.holds(hatch.name)) continue;
        Ages const ages{std::max(hatch.first_age, absence.from - hatch.date), absence.until - hatch.date};
        if (!(ages.from + instant < std::min(hatch.until, ages.to))) continue;
        if (in_birds(season.hatch(i).flock().alive(ages.from)) < 0.5) continue;  // all gone
        need_laying_rate(hatch, season.kind(i), ages.to + look_ahead);
        follow_hatch(season, i, ages, absence, all);
    }
    if (all.empty()) throw NoAnswer("no hatch with a hopper or a drinker has birds in that time");
    return all;
}

/// What holds for all vessels in the same worlds.
void judge_together(Away& away, std::vector<Followed> const& all) {
    double const end = in_days(away.absence.until - away.absence.from);
    std::size_t const worlds = all.front().empty.size();
    std::vector<double> soonest(worlds, RunOut::never);
    std::vector<int> times_first(all.size(), 0);
    for (std::size_t world = 0; world < worlds; ++world) {
        std::size_t first = 0;
        for (std::size_t i = 1; i < all.size(); ++i) {
            if (all[i].empty[world] < all[first].empty[world]) first = i;
        }
        soonest[world] = all[first].empty[world];
        if (std::isfinite(soonest[world])) ++times_first[first];
    }
    auto const most = std::max_element(times_first.begin(), times_first.end());
    if (*most > 0) away.first = static_cast<std::size_t>(most - times_first.begin());
    auto const held = std::count_if(soonest.begin(), soonest.end(), [&](double time) { return time >= end; });
    away.chance = static_cast<double>(held) / static_cast<double>(worlds);
    double const safe = quantile(soonest, 1 - away.absence.sure);
    if (!std::isfinite(safe)) return;
    away.come_by = away.absence.from + days(safe);
    away.come_at = Chores(away.farm).last_by(*away.come_by);
}

std::vector<Assumption> what_it_rests_on(Away const& away, Rations const& rations) {
    AssumptionList list;
    bool hoppers = false;
    for (domain::Hatch const& hatch : away.farm.hatches) {
        for (Holding const& holding : away.holdings) {
            if (holding.hatch != hatch.name) continue;
            auto const fed = std::find_if(hatch.feeding.rbegin(), hatch.feeding.rend(),
                                          [&](auto const& step) { return step.from <= holding.age + instant; });
            domain::Hatch meanwhile = hatch;
            meanwhile.until = away.absence.until - hatch.date;
            about_hatch(list, away.farm, meanwhile, {{fed->feed, holding.age, meanwhile.until}}, rations);
            hoppers = hoppers || domain::has_hopper(hatch);
        }
    }
    about_spread(list, away.farm, hoppers, !away.learned.empty());
    return list.all;
}

}  // namespace

Away away(Season const& season, Absence const& absence) {
    Lessons const& lessons = season.lessons();
    Rations const& rations = season.rations();
    auto const all = follow_all(season, absence);
    auto const calls = errands(lessons.farm, rations, absence);
    Away away{.absence = absence,
              .farm = lessons.farm,
              .holdings = {},
              .first = {},
              .come_by = {},
              .come_at = {},
              .errands = calls,
              .learned = lessons.learned,
              .alarms = {},
              .assumptions = {},
              .cautions = {}};
    std::vector<std::string> names;
    for (Followed const& one : all) {
        away.holdings.push_back(one.holding);
        names.push_back(one.holding.hatch);
    }
    away.alarms = lessons.alarms(names, absence.from);
    judge_together(away, all);
    away.assumptions = what_it_rests_on(away, rations);
    away.cautions = away_cautions(away, rations);
    for (Caution const& caution : lessons.cautions()) away.cautions.push_back(caution);
    return away;
}

}  // namespace cropful::engine
