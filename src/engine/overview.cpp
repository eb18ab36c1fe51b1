#include "cropful/engine/overview.hpp"

#include <algorithm>
#include <map>

#include "cropful/fault.hpp"
#include "engine/assumptions.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Standing;

/// The cost of feed by what a weight of it costs; absent when one of them has no price.
std::optional<Money> cost_of(std::vector<Eaten> const& eaten, domain::Farm const& farm) {
    Money sum = money(0);
    for (Eaten const& one : eaten) {
        domain::Feed const& feed = farm.feeds.at(one.feed);
        auto const price = domain::price_by_weight(feed);
        if (!price) return std::nullopt;
        sum += *price * one.amount;
    }
    return sum;
}

std::optional<Money> shared(std::optional<Money> const& cost, double by) {
    return cost && by > 0 ? std::optional<Money>(*cost / by) : std::nullopt;
}

HatchCost cost_of(HatchPlan const& part, domain::Farm const& farm) {
    Lifetime const& kept = part.lifetime;
    HatchCost cost{
        part.hatch.name, part.hatch.kind, part.hatch.date, part.chicks, kept.raised, kilograms(0), {}, {}, {}, {}};
    for (Eaten const& one : kept.feeds) cost.feed += one.amount;
    cost.cost = cost_of(kept.feeds, farm);
    cost.per_bird = shared(cost.cost, in_birds(kept.raised));
    if (kept.eggs) cost.per_dozen = shared(cost_of(kept.in_lay, farm), *kept.eggs / 12);
    cost.week_more = cost_of(kept.week_more, farm);
    cost.lays_unstated = !kept.in_lay.empty() && !kept.eggs;
    return cost;
}

void add_eaten(std::vector<Eaten>& sum, Eaten const& one) {
    auto const same = std::find_if(sum.begin(), sum.end(), [&](Eaten const& e) { return e.feed == one.feed; });
    if (same == sum.end()) {
        sum.push_back(one);
    } else {
        same->amount += one.amount;
    }
}

/// Every day with birds and those between, all hatches together.
std::vector<Day> all_days(Plan const& plan, Window const& window) {
    std::map<Moment, Day> days_with_birds;
    for (HatchPlan const& part : plan.hatches) {
        for (Day const& day : part.days) {
            if (!window.holds(day.at)) continue;
            Day& sum = days_with_birds.try_emplace(day.at, Day{day.at, birds(0), litres(0), {}}).first->second;
            sum.birds += day.birds;
            sum.water += day.water;
            for (Eaten const& one : day.feeds) add_eaten(sum.feeds, one);
        }
    }
    if (days_with_birds.empty()) throw NoAnswer("no hatch has birds in the time asked for");
    std::vector<Day> all;
    for (auto const& [at, day] : days_with_birds) {
        while (!all.empty() && all.back().at + days(1) < at) {
            all.push_back({all.back().at + days(1), birds(0), litres(0), {}});
        }
        all.push_back(day);
    }
    return all;
}

Placement part_of(Placement placement, Moment from, Moment to) {
    std::erase_if(placement.stays,
                  [&](Stay const& one) { return (one.to < from && one.free_from <= from) || one.from >= to; });
    std::erase_if(placement.unplaced, [&](Unplaced const& one) { return one.to <= from || one.from >= to; });
    return placement;
}

std::vector<Assumption> overview_assumptions(Overview const& overview, Rations const& rations) {
    Source const chosen{"chosen here, no source", Standing::common_practice};
    AssumptionList list;
    list.all = overview.plan.assumptions;
    domain::Farm const& farm = overview.plan.farm;
    for (HatchPlan const& part : overview.plan.hatches) about_water(list, rations.kinds.at(part.hatch.kind));
    if (!farm.brooders.empty()) {
        list.add({.id = "brooders-taken", .source = chosen});
    }
    for (auto const& [key, sort] : farm.brooders) {
        if (sort.shared) list.add({.id = "houses-shared", .with = {{"house", key}}, .source = chosen});
    }
    if (!overview.placement.unplaced.empty()) list.add({.id = "nearest-date", .source = chosen});
    list.add({.id = "cost-of-feed", .source = {"the farm file's prices", Standing::yours}});
    for (domain::Hatch const& hatch : farm.hatches) {
        if (!hatch.lays) continue;
        list.add({.id = "eggs",
                  .with = {{"hatch", hatch.name}, {"lays", Share{*hatch.lays}}},
                  .source = {"the farm file's lays", Standing::yours}});
    }
    return list.all;
}

}  // namespace

Overview make_overview(Season const& season, Window window) {
    Plan plan = make_plan(season, {}, NeedScale::as_printed,
                          {.hoppers = false,
                           .drinkers = false,
                           .mixes = false,
                           .shopping = false,
                           .amounts = false,
                           .fits = Fits::sought});
    // whole days
    if (window.from) window.from = Moment(window.from->date());
    std::vector<Day> days_listed = all_days(plan, window);
    Moment const from = days_listed.front().at, to = days_listed.back().at + days(1);
    Overview overview{std::move(plan), from, to, {}, std::move(days_listed), {}, {}, {}};
    overview.placement = part_of(overview.plan.placement, from, to);
    overview.readying = readying(overview.plan.farm, overview.plan.placement, window);
    for (HatchPlan const& part : overview.plan.hatches) {
        bool const there = part.hatch.date < to && part.hatch.date + part.hatch.until > from;
        if (there) overview.costs.push_back(cost_of(part, overview.plan.farm));
    }
    overview.assumptions = overview_assumptions(overview, season.rations());
    return overview;
}

}  // namespace cropful::engine
