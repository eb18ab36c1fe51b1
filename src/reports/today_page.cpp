#include "cropful/reports/today_page.hpp"

#include <set>

#include "cropful/domain/ranges.hpp"
#include "cropful/fault/characters.hpp"
#include "cropful/reports/diary_page.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/caution_words.hpp"
#include "reports/task_words.hpp"

namespace cropful::reports {

namespace {

using engine::Moment;
using engine::Numbered;
using engine::Task;
using engine::Today;
using engine::Work;

/// When the next of what is coming is done.
Moment next_at(Today const& today) {
    return ranges::min(today.coming, [](Task const& task) { return task.at.iso(); }).at;
}

/// Those of the plan's cautions that cannot wait until somebody reads the plan.
bool is_alarming(std::string const& caution) {
    static std::set<std::string> const all{"deaths-high", "diary-out-of-date", "no-brooder", "sodium-lethal",
                                           "water-stop"};
    return all.contains(caution);
}

constexpr quantities::Duration soon = quantities::days(14);

/// Whether one of these hatches finds too few houses before long.
bool is_crowded_soon(Today const& today, std::vector<std::string> const& hatches) {
    return ranges::any_of(today.plan.placement.unplaced, [&](engine::Unplaced const& one) {
        bool const its = ranges::contains(hatches, one.hatch);
        return its && one.from < today.now + soon && today.now < one.to;
    });
}

/// "Tonight's chore": the hour alone today.
std::string chore_heading(Moment at, Today const& today) {
    auto const measures = today.plan.farm.measures;
    return at.date() == today.now.date() ? chore_hour(at, measures) + ", today" : chore_words(at, measures);
}

std::string placed(Task const& task, domain::Farm const& farm) {
    std::string const place = task_place(task);
    return (place.empty() ? "" : place + ": ") + task_words(task, farm);
}

std::string line_of(Task const& task, domain::Farm const& farm) {
    std::string words = placed(task, farm);
    if (task.would_do > 0) words += "; " + std::to_string(task.would_do) + " x " + task.vessel + " would last";
    if (task.overdue) words += " (due " + chore_words(task.at, farm.measures) + ")";
    return words;
}

/// What is done alike for several hatches stands in one row.
bool is_shared(Work work) {
    return work == Work::look || work == Work::change_water || work == Work::warmth || work == Work::fetch;
}

std::string shared_words(Work work) {
    if (work == Work::change_water) return "fresh water: ";
    return work == Work::warmth ? "air at chick height: " : "fetch ";
}

std::string shared_part(Task const& task, domain::Farm const& farm) {
    std::string const place = task_place(task), brief = task_brief(task, farm);
    return place + (place.empty() || brief.empty() ? "" : ", ") + brief;
}

void add_shared(Table& table, std::vector<Numbered> const& tasks, Work work, domain::Farm const& farm) {
    std::vector<int> numbers;
    std::vector<std::string> parts;
    for (Numbered const& one : tasks) {
        if (one.task.work != work) continue;
        numbers.push_back(one.number);
        parts.push_back(shared_part(one.task, farm));
    }
    std::string const words =
        work == Work::look ? "look in everywhere, count the dead" : shared_words(work) + join(parts, "; ");
    table.add({numbers_words(numbers), words});
}

Page chore_part(std::vector<Numbered> const& tasks, Today const& today) {
    domain::Farm const& farm = today.plan.farm;
    bool const late = tasks.front().task.overdue;
    Table table({Align::right, Align::left}, 1);
    std::set<Work> done;
    for (Numbered const& one : tasks) {
        if (late || !is_shared(one.task.work)) {
            table.add({std::to_string(one.number), line_of(one.task, farm)});
        } else if (done.insert(one.task.work).second) {
            add_shared(table, tasks, one.task.work, farm);
        }
    }
    return heading(late ? "STILL TO BE DONE" : chore_heading(tasks.front().task.at, today)) + table;
}

std::vector<std::vector<Numbered>> by_chore(std::vector<Numbered> const& tasks) {
    std::vector<std::vector<Numbered>> all;
    for (Numbered const& one : tasks) {
        bool const first = all.empty();
        Task const* before = first ? nullptr : &all.back().back().task;
        bool const together =
            before && ((before->overdue && one.task.overdue) ||
                       (before->at.iso() == one.task.at.iso() && before->overdue == one.task.overdue));
        if (!together) all.emplace_back();
        all.back().push_back(one);
    }
    return all;
}

/// "7 bags of Quail finisher".
std::string fetched_words(Task const& task, domain::Farm const& farm) {
    std::string words = task_brief(task, farm);
    auto const open = words.find(" ("), close = words.find(") ");
    if (open != std::string::npos && close != std::string::npos && open < close) words.erase(open, close - open + 1);
    return words;
}

constexpr std::size_t most_coming = 4;

/// One line for each of the next few; what is fetched on a day together.
Page coming_part(Today const& today) {
    domain::Farm const& farm = today.plan.farm;
    Table table({Align::left, Align::left}, 1);
    std::vector<std::string> fetched;
    for (Task const& task : today.coming) {
        if (task.work == Work::fetch) fetched.push_back(fetched_words(task, farm));
    }
    for (Task const& task : today.coming) {
        std::string const place = task.hatch.empty() ? "" : task.hatch + ": ";
        bool const fetch = task.work == Work::fetch;
        if ((fetch && fetched.empty()) || table.rows().size() == most_coming) continue;
        table.add({task.at.day(), fetch ? "fetch " + join(fetched) : place + task_brief(task, farm)});
        if (fetch) fetched.clear();
    }
    return table.empty() ? Page() : heading("COMING") + table;
}

}  // namespace

std::vector<std::string> today_alarms(Today const& today) {
    auto const measures = today.plan.farm.measures;
    std::vector<std::string> all;
    for (engine::Interval const& alarm : today.plan.alarms) all.push_back(alarm_words(alarm, measures));
    std::vector<domain::Caution> urgent;
    for (domain::Caution const& one : today.plan.cautions) {
        bool const later = one.id == "no-brooder" && !is_crowded_soon(today, one.hatches);
        if (is_alarming(one.id) && !later) urgent.push_back(one);
    }
    for (CautionLine const& one : caution_lines(urgent, measures)) all.push_back(one.text);
    return all;
}

Page today_page(Today const& today) {
    auto const measures = today.plan.farm.measures;
    Page page = both_ends(strong(plan_name(today.plan)), today.now.day_year() + " " + chore_hour(today.now, measures));
    for (std::string const& words : today_alarms(today)) page += warning(words);
    for (auto const& tasks : by_chore(today.tasks)) page += chore_part(tasks, today);
    if (today.tasks.empty()) {
        bool const known = !today.coming.empty();
        page += wrap(known ? "Nothing to do until " + chore_words(next_at(today), measures) + "." : "Nothing to do.");
    }
    return page + coming_part(today);
}

Page done_page(std::vector<TickedTask> const& done, domain::Farm const& farm, std::string const& file) {
    Table table({Align::right, Align::left}, 1);
    for (TickedTask const& one : done) {
        std::string words = placed(one.task.task, farm);
        if (one.seen) words += "; you say: " + entry_words(*one.seen, farm.measures);
        table.add({std::to_string(one.task.number), words});
    }
    return wrap("Done, and written in " + escaped(file) + ":") + table;
}

}  // namespace cropful::reports
