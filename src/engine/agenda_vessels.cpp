
#include "cropful/domain/ranges.hpp"
#include "engine/agenda_parts.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr Mass least_to_weigh = kilograms(0.0005);

/// The step of feeding that begins at an age after another; null where none does.
domain::FeedingStep const* fed_from(domain::Hatch const& hatch, Duration age) {
    for (std::size_t i = 1; i < hatch.feeding.size(); ++i) {
        Duration const apart = hatch.feeding[i].from - age;
        if (apart < instant && -apart < instant) return &hatch.feeding[i];
    }
    return nullptr;
}

std::string const& fed_at(domain::Hatch const& hatch, Duration age) {
    std::string const* feed = &hatch.feeding.front().feed;
    for (domain::FeedingStep const& step : hatch.feeding) {
        if (step.from <= age + instant) feed = &step.feed;
    }
    return *feed;
}

template <class Amount>
Task filling(HatchTasks const& hatch, StagePlan const& stage, Vessels<Amount> const& vessels, Fill<Amount> const& fill,
             Work work, Reason why) {
    Task task = hatch.task(work, fill.would_do > 0 ? Reason::too_small : why, fill.do_at, &stage);
    task.vessel = vessels.key;
    task.vessels = vessels.count;
    task.share_of_full = fill.share_of_full;
    task.until = fill.until;
    task.overdue = fill.due.has_value();
    if (fill.due) task.at = *fill.due;
    task.would_do = fill.would_do;
    return task;
}

void add_hopper_fills(HatchTasks const& hatch, StagePlan const& stage) {
    for (Fill<Mass> const& fill : stage.hoppers->fills) {
        if (fill.put_in < least_to_weigh) continue;  // a look is enough
        auto const* change = fed_from(hatch.plan.hatch, fill.due ? *fill.due - hatch.plan.hatch.date : fill.age);
        Task task = filling(hatch, stage, *stage.hoppers, fill, change ? Work::change_feed : Work::top_up,
                            change ? Reason::of_age : Reason::runs_out);
        task.what = change ? change->feed : fed_at(hatch.plan.hatch, fill.age);
        task.feed = fill.put_in;
        task.feed_left = fill.content * static_cast<double>(stage.hoppers->count);
        hatch.add(std::move(task));
    }
}

bool begins_batch(HatchPlan const& plan, Fill<Volume> const& fill) {
    return ranges::any_of(plan.mixes, [&](Mix const& mix) {
        return ranges::any_of(mix.batches, [&](Batch const& batch) {
            return batch.age - fill.age < instant && fill.age - batch.age < instant;
        });
    });
}

void add_drinker_fills(HatchTasks const& hatch, StagePlan const& stage) {
    for (Fill<Volume> const& fill : stage.drinkers->fills) {
        if (begins_batch(hatch.plan, fill)) continue;  // part of stirring it
        Task task = filling(hatch, stage, *stage.drinkers, fill, fill.fresh ? Work::change_water : Work::top_up,
                            fill.fresh ? Reason::water_is_due : Reason::runs_out);
        task.water = fill.put_in;
        task.water_left = fill.content * static_cast<double>(stage.drinkers->count);
        task.each = fill.content;
        hatch.add(std::move(task));
    }
}

void add_batches(HatchTasks const& hatch, Mix const& mix) {
    for (Batch const& batch : mix.batches) {
        StagePlan const* stage = hatch.stage_at(batch.age);
        Task task = hatch.task(Work::stir, Reason::course, hatch.chores.last_by(batch.at), stage);
        task.what = mix.supplement;
        task.water = batch.dose.water;
        task.dose = batch.dose;
        task.until = batch.at + batch.lasts;
        if (stage != nullptr && stage->drinkers && !batch.dose.stock) {
            task.vessel = stage->drinkers->key;
            task.vessels = stage->drinkers->count;
            task.each = batch.each_drinker;
            task.water_left = batch.each_drinker * static_cast<double>(task.vessels);
        }
        hatch.add(std::move(task));
    }
}

/// Where no hopper tells how much goes in.
void add_changes_without_hopper(HatchTasks const& hatch) {
    for (FeedNeed const& need : hatch.plan.feeds) {
        if (fed_from(hatch.plan.hatch, need.from) == nullptr) continue;
        StagePlan const* stage = hatch.stage_at(need.from);
        if (stage != nullptr && stage->hoppers) continue;
        Task task = hatch.task(Work::change_feed, Reason::of_age,
                               hatch.chores.last_by(hatch.plan.hatch.date + need.from), stage);
        task.what = need.feed;
        hatch.add(std::move(task));
    }
}

}  // namespace

void add_vessel_tasks(HatchTasks const& hatch) {
    for (StagePlan const& stage : hatch.plan.stages) {
        if (stage.hoppers) add_hopper_fills(hatch, stage);
        if (stage.drinkers) add_drinker_fills(hatch, stage);
    }
    for (Mix const& mix : hatch.plan.mixes) add_batches(hatch, mix);
    add_changes_without_hopper(hatch);
}

}  // namespace cropful::engine
