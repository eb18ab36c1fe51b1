#include "cropful/engine/agenda.hpp"

#include <array>
#include <map>
#include <tuple>

#include "cropful/domain/ranges.hpp"
#include "engine/agenda_parts.hpp"

namespace cropful::engine {

namespace {

Task fetching(Fetch const& one, Chores const& chores, Moment from) {
    Task task{.at = chores.first_from(one.on.date() == from.date() ? from : one.on),
              .work = Work::fetch,
              .why = Reason::needed,
              .what = one.what,
              .title = one.title};
    task.feed = one.feed;
    task.packs = one.packs;
    task.until = one.needed;
    return task;
}

/// One mixing of the tank, for all on its line.
Task tank_mixing(StockLine const& line, StockFill const& fill, domain::Supplement const& given) {
    Task task{.at = fill.at, .work = Work::stir, .why = fill.too_soon ? Reason::too_small : Reason::course};
    task.hatch = line.hatches.front();
    task.line = line.hatches;
    task.what = line.supplement;
    task.water = fill.put_in;
    task.dose = product_in_stock(given, fill.put_in);
    task.until = fill.until;
    return task;
}

/// Several rounds through the barn: all are looked at, water and warmth; then hatch by hatch, and birds move to where
/// all is there.
int round_of(Task const& task) {
    if (task.work == Work::look) return 1;
    if (task.work == Work::change_water) return 2;
    return task.work == Work::warmth ? 3 : 4;
}

/// What tells a task from all others of its moment.
std::string identity(Task const& task) {
    std::string words = name(task.work);
    for (std::string const& part :
         {task.hatch, task.house, task.vessel, task.what, std::string(task.of_eggs ? "eggs" : "")}) {
        if (!part.empty()) words += "/" + part;
    }
    return words + "/" + task.at.iso();
}

void give_ids(std::vector<Task>& tasks) {
    std::map<std::string, int> alike;
    for (Task& task : tasks) {
        task.id = identity(task);
        int const number = ++alike[task.id];
        if (number > 1) task.id += "/" + std::to_string(number);
    }
}

}  // namespace

std::string name(Work work) {
    constexpr std::array names{"look", "top-up", "change-water", "stir",  "change-feed",     "warmth",
                               "move", "ready",  "remove",       "clean", "withdrawal-ends", "fetch"};
    return names.at(static_cast<std::size_t>(work));
}

std::string name(Reason reason) {
    constexpr std::array names{"every-chore", "runs-out",   "too-small",  "water-is-due", "course",
                               "of-age",      "hatching",   "birds-come", "birds-left",   "planned",
                               "last-day",    "withdrawal", "needed"};
    return names.at(static_cast<std::size_t>(reason));
}

Moment last_chore(domain::Farm const& farm, Moment at) { return Chores(farm).last_by(at); }

Agenda make_agenda(Season const& season, Window const& window, Progress const& progress) {
    Wanted const as_ever{.as_of_farm = true, .progress = progress};
    Plan plan = make_plan(season, window, NeedScale::as_printed, as_ever);
    Moment const first = domain::parse_moment("2000-01-01"), last = domain::parse_moment("2199-12-31");
    Moment const from = window.from.value_or(window.now.value_or(first)), until = window.until.value_or(last);
    // nothing ends with the window: what is filled and brought home in it is for the time after it too
    Window whole = window;
    whole.until.reset();
    std::optional<Plan> const onward =
        window.until ? std::optional(make_plan(season, whole, NeedScale::as_printed, as_ever)) : std::nullopt;
    Plan const& done = onward ? *onward : plan;
    auto tasks = agenda(done, season.rations(), fetches(done, from), from, until);
    return {std::move(plan), from, until, std::move(tasks)};
}

bool is_routine(Work work) { return work == Work::look || work == Work::top_up || work == Work::change_water; }

StagePlan const* HatchTasks::stage_at(Duration age) const {
    auto const found = ranges::find_if(
        plan.stages, [&](StagePlan const& stage) { return stage.from <= age + instant && age + instant < stage.to; });
    return found == plan.stages.end() ? nullptr : &*found;
}

Task HatchTasks::task(Work work, Reason why, Moment at, StagePlan const* stage) const {
    Task task{.at = at, .work = work, .why = why, .hatch = plan.hatch.name};
    if (stage != nullptr && stage->house) {
        task.house = *stage->house;
        task.houses = stage->houses;
        task.numbers = stage->numbers;
    }
    return task;
}

void HatchTasks::add(Task task) const {
    Moment const end = is_routine(task.work) ? routine_until : until;
    bool const asked = from <= task.at + instant && task.at + instant < end;
    if (asked || task.overdue) all.push_back(std::move(task));
}

std::vector<Task> agenda(Plan const& plan, Rations const& rations, std::vector<Fetch> const& fetches, Moment from,
                         Moment until, std::optional<Moment> routine_until) {
    std::vector<Task> all;
    Chores const chores(plan.farm);
    std::map<std::string, std::size_t> order;
    for (HatchPlan const& hatch : plan.hatches) {
        HatchTasks const tasks{hatch, plan.farm, chores, from, until, routine_until.value_or(until), all};
        add_flock_tasks(tasks, rations.kinds.at(hatch.hatch.kind).brooding);
        add_vessel_tasks(tasks);
        add_house_tasks(tasks, plan.placement);
        order.emplace(hatch.hatch.name, order.size());
    }
    for (StockLine const& line : plan.stocks) {
        for (StockFill const& fill : line.fills) {
            Task task = tank_mixing(line, fill, plan.farm.supplements.at(line.supplement));
            if (from <= task.at + instant && task.at + instant < until) all.push_back(std::move(task));
        }
    }
    for (Fetch const& one : fetches) {
        Task task = fetching(one, chores, from);
        if (from <= task.at && task.at < until) all.push_back(std::move(task));
    }
    auto const place = [&](Task const& task) {
        auto const hatch = order.find(task.hatch);
        return std::tuple(round_of(task), hatch == order.end() ? order.size() : hatch->second, task.work);
    };
    ranges::stable_sort(
        all, [&](Task const& a, Task const& b) { return a.at < b.at || (!(b.at < a.at) && place(a) < place(b)); });
    give_ids(all);
    return all;
}

}  // namespace cropful::engine
