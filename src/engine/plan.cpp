#include "cropful/engine/plan.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/domain/ranges.hpp"
#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/assumptions.hpp"
#include "engine/bags.hpp"
#include "engine/care.hpp"
#include "engine/cautions.hpp"
#include "engine/check_extras.hpp"
#include "engine/hatch_model.hpp"
#include "engine/hunger.hpp"
#include "engine/lifetime.hpp"
#include "engine/quantile.hpp"
#include "engine/refills.hpp"
#include "engine/well.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// The part of a hatch's life that is asked about; empty when none is.
std::optional<Ages> ages_in(domain::Hatch const& hatch, Window const& window) {
    if (!window.hatches.holds(hatch.name)) return std::nullopt;
    Ages ages{hatch.first_age, hatch.until};
    if (window.from) ages.from = std::max(ages.from, *window.from - hatch.date);
    if (window.until) ages.to = std::min(ages.to, *window.until - hatch.date);
    return ages.from + instant < ages.to ? std::optional(ages) : std::nullopt;
}

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
    std::size_t all = 0;
    for (StagePlan const& stage : plan.stages) {
        if (stage.hoppers) all += stage.hoppers->fills.size();
        if (stage.drinkers) all += stage.drinkers->fills.size();
    }
    for (Mix const& mix : plan.mixes) all += mix.batches.size();
    return all;
}

/// Changes of water alone in the drinkers of a whole life, no more than they will be.
std::size_t changes(HatchPlan const& plan, domain::Farm const& farm) {
    auto const& drinker = plan.hatch.drinker;
    if (!drinker || !farm.drinkers.at(*drinker).change_every) return 0;
    double const often = std::min(1 / in_days(*farm.drinkers.at(*drinker).change_every),
                                  static_cast<double>(domain::chores_of(farm).size()));
    return whole_number<std::size_t>(in_days(plan.feeds.back().to - plan.feeds.front().from) * often / 2);
}

/// Throws NoAnswer for fills and batches that add up to more than anybody can do or read; before they are worked out,
/// where that is plain.
void refuse_endless(Plan const& plan) {
    std::size_t sum = 0, plain = 0;
    for (HatchPlan const& hatch : plan.hatches) {
        sum += deeds(hatch);
        plain += changes(hatch, plan.farm);
    }
    if (std::max(sum, plain) <= most_deeds) return;
    throw NoAnswer("hoppers and drinkers would be filled and solutions mixed more than " +
                   number(static_cast<double>(most_deeds), 0) +
                   " times in all: check their sizes, change_every and keeps, or ask for a part with --from and --to");
}

/// The feeds of a hatch and when each is fed, without amounts.
std::vector<FeedNeed> feeds_of(domain::Hatch const& hatch, Ages ages) {
    std::vector<FeedNeed> all;
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        Duration const from = std::max(ages.from, hatch.feeding[i].from);
        Duration const to = std::min(ages.to, fed_until(hatch, i));
        if (!(from + instant < to)) continue;
        all.push_back({hatch.feeding[i].feed, from, to, kilograms(0), {}, 0, {}, (hatch.date + from).calendar_day()});
    }
    return all;
}

void add_amounts(HatchPlan& plan, FarmNeeds& needs, HatchModel const& model) {
    for (FeedNeed& need : plan.feeds) {
        auto worlds = needs.add(need.feed, model, {need.from, need.to});
        need.band = in_mass(band(worlds));
        need.amount = model.feed().between(need.from, need.to);
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
        if (farm.water) add_thirst(some, intake);
        mark_excess(some, rations.limits, plan.hatch.laying_from);
        add_excess_without_need(some, feed, rations.limits);
        std::move(some.begin(), some.end(), std::back_inserter(all));
    }
    return all;
}

/// Until what age a hatch's use must be known: fills last past the end of a plan.
Duration used_until(std::vector<domain::Course> const& courses, Ages ages, Wanted const& wanted) {
    if (wanted.hoppers || wanted.drinkers) return ages.to + look_ahead;
    if (wanted.shopping || !wanted.mixes) return ages.to;
    return courses.empty() ? ages.from : std::min(ages.to, course_ends(courses.back()));
}

HatchPlan plan_hatch(Season const& season, std::size_t number, FarmNeeds& needs, Ages ages, NeedScale scale,
                     Wanted const& wanted) {
    domain::Farm const& farm = season.farm();
    HatchModel const& model = season.hatch(number);
    domain::Hatch const& hatch = model.hatch();
    Heads const all = wanted.use ? model.flock().counted() : chicks(hatch, model.kind());
    HatchPlan plan{hatch, model.kind().title, all, feeds_of(hatch, ages), {}, {}};
    plan.checks = checks_for(plan, farm, season.rations(), model.intake(), scale);
    if (!wanted.use) return plan;

    need_laying_rate(hatch, model.kind(), used_until(domain::courses_of(hatch, farm), ages, wanted));
    if (wanted.amounts) add_amounts(plan, needs, model);
    if (wanted.course) {
        plan.weeks = weeks(model.flock(), model.feed(), model.water(), ages);
        plan.days = days_of(hatch, model.flock(), model.feed(), model.water(), ages);
        plan.lifetime = lifetime_of(hatch, model.flock(), model.feed());
    }
    return plan;
}

/// Gives the houses of each stage their numbers.
void number_houses(HatchPlan& part, Placement const& placement) {
    for (Stay const& stay : placement.stays) {
        if (stay.hatch != part.hatch.name) continue;
        for (StagePlan& stage : part.stages) {
            Moment const from = part.hatch.date + stage.from;
            bool const same = stage.house == stay.brooder && stay.from <= from + instant && from < stay.to;
            if (same) stage.numbers.push_back(stay.number);
        }
    }
    for (StagePlan& stage : part.stages) {
        if (std::ssize(stage.numbers) < stage.houses) stage.numbers.clear();  // too few: the plan goes on without
    }
}

/// What hatches that are not planned for have eaten since the store was counted, to the start of the plan.
std::map<std::string, Mass> eaten_by_others(Season const& season, std::vector<std::size_t> const& planned,
                                            Moment until) {
    std::map<std::string, Mass> eaten;
    for (std::size_t i = 0; i < season.farm().hatches.size(); ++i) {
        if (ranges::contains(planned, i)) continue;
        domain::Hatch const& hatch = season.farm().hatches[i];
        for (std::size_t step = 0; step < hatch.feeding.size(); ++step) {
            auto const store = season.lessons().store.find(hatch.feeding[step].feed);
            if (store == season.lessons().store.end() || !store->second.at) continue;
            Duration const from = std::max({*store->second.at - hatch.date, hatch.feeding[step].from, hatch.first_age});
            Duration const to = std::min(until - hatch.date, fed_until(hatch, step));
            if (from < to) eaten[hatch.feeding[step].feed] += season.hatch(i).feed().between(from, to);
        }
    }
    return eaten;
}

}  // namespace

Duration fed_until(domain::Hatch const& hatch, std::size_t step) {
    bool const last = step + 1 == hatch.feeding.size();
    return last ? hatch.until : std::min(hatch.until, hatch.feeding[step + 1].from);
}

Plan make_plan(Season const& season, Window window, NeedScale scale, Wanted wanted) {
    Rations const& rations = season.rations();
    refuse_endless(season.farm(), window);
    Plan plan;
    plan.farm = season.farm();
    plan.need_scale = scale;
    plan.learned = season.lessons().learned;
    auto const tell = [&](std::size_t done) {
        if (wanted.progress) wanted.progress(done, 2 * plan.farm.hatches.size());
    };
    FarmNeeds farm_needs;
    std::vector<std::size_t> numbers;  // of the hatches planned for
    for (std::size_t i = 0; i < plan.farm.hatches.size(); ++i) {
        if (auto const ages = ages_in(plan.farm.hatches[i], window)) {
            plan.hatches.push_back(plan_hatch(season, i, farm_needs, *ages, scale, wanted));
            numbers.push_back(i);
        }
        tell(i + 1);
    }
    bool const some = wanted.as_of_farm && !window.hatches.names.empty();
    auto const hunger = some ? farm_hunger(season, window.from) : farm_needs.hunger();
    if (wanted.use && wanted.drinkers) refuse_endless(plan);
    for (std::size_t i = 0; wanted.use && i < plan.hatches.size(); ++i) {
        HatchPlan& part = plan.hatches[i];
        HatchModel const& model = season.hatch(numbers[i]);
        add_care(part, season, model, hunger, window.now, wanted);
        refuse_endless(plan);
        tell(plan.farm.hatches.size() + numbers[i] + 1);
    }
    tell(2 * plan.farm.hatches.size());
    std::vector<std::string> names;
    for (HatchPlan const& part : plan.hatches) names.push_back(part.hatch.name);
    plan.alarms = season.lessons().alarms(names, window.from);
    if (plan.hatches.empty()) throw NoAnswer("no hatch has birds in the time asked for");
    if (wanted.use) plan.placement = place(season, wanted.fits);
    for (HatchPlan& part : plan.hatches) number_houses(part, plan.placement);
    if (wanted.use && wanted.shopping) {
        plan.readying = readying(plan.farm, plan.placement, window);
        std::map<std::string, StoreCount> store;
        if (window.now) {
            store = season.lessons().store;
            for (auto const& [feed, amount] : eaten_by_others(season, numbers, window.from.value_or(*window.now))) {
                store.at(feed).amount -= amount;
            }
        }
        count_bags(plan, farm_needs.bands(), store);
    }
    Moment const begins = window.from.value_or(plan.hatches.front().hatch.date);
    if (wanted.mixes) plan.stocks = stock_lines(season, plan, window);
    if (wanted.mixes) add_water(plan, rations, window.now.value_or(begins));
    if (!wanted.notes) return plan;
    plan.assumptions = assumptions(plan, rations);
    plan.cautions = cautions(plan, rations);
    for (Caution const& caution : season.lessons().cautions()) plan.cautions.push_back(caution);
    return plan;
}

Plan make_plan(domain::Farm const& farm, Rations const& rations, Window window, domain::Diary const& diary,
               NeedScale scale, Wanted wanted) {
    return make_plan(Season(farm, rations, diary), window, scale, wanted);
}

}  // namespace cropful::engine
