#include <algorithm>
#include <map>

#include "engine/agenda_parts.hpp"

namespace cropful::engine {

void add_house_tasks(HatchTasks const& hatch, Placement const& placement) {
    std::map<std::pair<std::string, std::string>, Task> readied, left;  // by sort and moment
    auto const put = [&](std::map<std::pair<std::string, std::string>, Task>& tasks, Stay const& stay, Task task) {
        Task& one = tasks.try_emplace({stay.brooder, task.at.iso()}, std::move(task)).first->second;
        one.house = stay.brooder;
        one.numbers.push_back(stay.number);
        one.houses = static_cast<int>(one.numbers.size());
    };
    for (Stay const& stay : placement.stays) {
        if (stay.hatch != hatch.plan.hatch.name) continue;
        Task ready = hatch.task(Work::ready, Reason::birds_come, hatch.chores.last_by(stay.ready_by), nullptr);
        ready.until = stay.from;
        put(readied, stay, std::move(ready));
        put(left, stay, hatch.task(Work::clean, Reason::birds_left, hatch.chores.first_from(stay.to), nullptr));
    }
    for (auto* const tasks : {&readied, &left}) {
        for (auto& [key, task] : *tasks) hatch.add(std::move(task));
    }
}

}  // namespace cropful::engine
