#include <algorithm>

#include "cropful/domain/ranges.hpp"
#include "cropful/engine/withdrawals.hpp"
#include "engine/agenda_parts.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

Duration begins(HatchPlan const& plan) { return plan.feeds.front().from; }
Duration ends(HatchPlan const& plan) { return plan.feeds.back().to; }

/// At each chore after the birds came.
void add_looks(HatchTasks const& hatch) {
    domain::Hatch const& its = hatch.plan.hatch;
    Moment const last = std::min(hatch.routine_until, its.date + ends(hatch.plan));
    Moment at = hatch.chores.first_from(
        std::max(hatch.from, its.date + std::max(begins(hatch.plan), its.first_age + instant * 2.0)));
    for (; at + instant < last; at = hatch.chores.first_after(at)) {
        hatch.add(hatch.task(Work::look, Reason::every_chore, at, hatch.stage_at(at - its.date)));
    }
}

void add_warmth(HatchTasks const& hatch, Brooding const& brooding) {
    for (BroodingRow const& row : brooding.rows) {
        Duration const age = days(row.first_day - 1);
        if (age + instant < begins(hatch.plan) || !(age + instant < ends(hatch.plan))) continue;
        Moment const at = hatch.chores.first_from(hatch.plan.hatch.date + age);
        Task task = hatch.task(Work::warmth, Reason::of_age, at, hatch.stage_at(age));
        task.warmth = row;
        hatch.add(std::move(task));
    }
}

/// Birds on the calendar day of an age, where days are worked out.
std::optional<Heads> birds_on(HatchPlan const& plan, Moment at) {
    for (Day const& day : plan.days) {
        if (day.at.date() == at.date()) return day.birds;
    }
    return std::nullopt;
}

void add_moves(HatchTasks const& hatch) {
    domain::Hatch const& its = hatch.plan.hatch;
    for (StagePlan const& stage : hatch.plan.stages) {
        bool const first = stage.from <= its.first_age + instant;
        bool const starts = ranges::any_of(domain::stages_of(its),
                                           [&](auto const& one) { return in_days(one.from - stage.from) == 0; });
        if (!first && !starts) continue;  // the plan begins within it
        if (first && its.first_age > days(0)) continue;
        Moment const at = its.date + stage.from;
        Task task = hatch.task(Work::move, first ? Reason::hatching : Reason::of_age,
                               first ? hatch.chores.first_from(at) : hatch.chores.last_by(at), &stage);
        task.birds = first ? hatch.plan.chicks : birds_on(hatch.plan, at);
        hatch.add(std::move(task));
    }
}

void add_removals(HatchTasks const& hatch) {
    domain::Hatch const& its = hatch.plan.hatch;
    for (domain::Removal const& removal : its.removed) {
        Moment const at = its.date + removal.at;
        Task task = hatch.task(Work::remove, Reason::planned, hatch.chores.last_by(at), hatch.stage_at(removal.at));
        task.birds = removal.birds;
        hatch.add(std::move(task));
    }
    if (ends(hatch.plan) + instant < its.until) return;  // the plan ends before
    Task task = hatch.task(Work::remove, Reason::last_day, hatch.chores.last_by(its.date + its.until),
                           hatch.plan.stages.empty() ? nullptr : &hatch.plan.stages.back());
    if (!hatch.plan.days.empty()) task.birds = hatch.plan.days.back().birds;
    hatch.add(std::move(task));
}

/// Counted from the planned end of what is given, whether or not that lies in the plan.
void add_withdrawals(HatchTasks const& hatch) {
    domain::Hatch const& its = hatch.plan.hatch;
    for (Withdrawal const& one : withdrawals_of(its, hatch.farm)) {
        if (one.from >= ends(hatch.plan)) continue;
        auto const add = [&](Duration waiting, bool eggs) {
            Duration const over = one.to + waiting;
            Task task = hatch.task(Work::withdrawal_ends, Reason::withdrawal, hatch.chores.first_from(its.date + over),
                                   hatch.stage_at(over));
            task.what = one.key;
            task.title = one.title;
            task.withdrawal = waiting;
            task.of_eggs = eggs;
            hatch.add(std::move(task));
        };
        if (one.birds) add(*one.birds, false);
        if (one.eggs) add(*one.eggs, true);
    }
}

}  // namespace

void add_flock_tasks(HatchTasks const& hatch, Brooding const& brooding) {
    if (hatch.plan.feeds.empty()) return;
    add_looks(hatch);
    add_warmth(hatch, brooding);
    add_moves(hatch);
    add_removals(hatch);
    add_withdrawals(hatch);
}

}  // namespace cropful::engine
