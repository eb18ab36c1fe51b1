#pragma once

#include <vector>

#include "cropful/engine/agenda.hpp"
#include "engine/chores.hpp"
#include "engine/instant.hpp"

namespace cropful::engine {

/// Collects the tasks of one hatch.
struct HatchTasks {
    HatchPlan const& plan;
    domain::Farm const& farm;
    Chores chores;
    Moment from;
    Moment until;
    Moment routine_until;
    std::vector<Task>& all;

    /// The stage at an age; null where none is planned.
    [[nodiscard]] StagePlan const* stage_at(Duration age) const;
    /// A task of this hatch, in the houses of a stage where there is one.
    [[nodiscard]] Task task(Work work, Reason why, Moment at, StagePlan const* stage) const;
    /// Keeps it if it is to be done in the time asked for, or still.
    void add(Task task) const;
};

// What is done to hoppers and drinkers, and when the feed changes.
void add_vessel_tasks(HatchTasks const& hatch);
// Looking in, warmth, moves, birds that go, and the ends of withdrawals.
void add_flock_tasks(HatchTasks const& hatch, Brooding const& brooding);
// Houses made ready before birds come, and cleaned when they have left.
void add_house_tasks(HatchTasks const& hatch, Placement const& placement);

}  // namespace cropful::engine
