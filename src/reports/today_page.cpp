#include "cropful/reports/today_page.hpp"

#include <algorithm>
#include <set>

#include "cropful/fault/characters.hpp"
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

/// Those of the plan's cautions that cannot wait until somebody reads the plan.
bool is_alarming(std::string const& caution) {
    static std::set<std::string> const all{"deaths-high", "diary-out-of-date", "sodium-lethal"};
    return all.contains(caution);
}

/// "Tonight's chore": the hour alone today.
std::string chore_heading(Moment at, Today const& today) {
    std::string const words = chore_words(at, today.plan.farm.measures);
    return at.date() == today.now.date() ? words.substr(at.day().size() + 1) + ", today" : words;
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

/// All looks of one chore in one line.
void add_looks_line(Table& table, std::vector<Numbered> const& looks) {
    std::vector<int> numbers;
    std::vector<std::string> places;
    for (Numbered const& one : looks) {
        numbers.push_back(one.number);
        places.push_back(task_place(one.task));
    }
    if (!looks.empty()) table.add({numbers_words(numbers), "look in and count the dead: " + join(places, "; ")});
}

Page chore_part(std::vector<Numbered> const& tasks, Today const& today) {
    Table table({Align::right, Align::left}, 1);
    std::vector<Numbered> looks;
    for (Numbered const& one : tasks) {
        if (one.task.work == Work::look) looks.push_back(one);
    }
    add_looks_line(table, looks);
    for (Numbered const& one : tasks) {
        if (one.task.work != Work::look) table.add({std::to_string(one.number), line_of(one.task, today.plan.farm)});
    }
    bool const late = tasks.front().task.overdue;
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

Page coming_part(Today const& today) {
    Table table({Align::left, Align::left}, 1);
    std::string day;
    for (Task const& task : today.coming) {
        std::string const at = task.at.day();
        table.add({at == day ? "" : at, placed(task, today.plan.farm)});
        day = at;
    }
    return table.empty() ? Page() : heading("COMING") + table;
}

}  // namespace

std::vector<std::string> today_alarms(Today const& today) {
    auto const measures = today.plan.farm.measures;
    std::vector<std::string> all;
    for (engine::Interval const& alarm : today.plan.alarms) all.push_back(alarm_words(alarm, measures));
    for (CautionLine const& one : caution_lines(today.plan.cautions, measures)) {
        if (is_alarming(one.id)) all.push_back(one.text);
    }
    return all;
}

Page today_page(Today const& today) {
    auto const measures = today.plan.farm.measures;
    Page page = both_ends(strong(plan_name(today.plan)), moment_and_year(today.now, measures));
    for (std::string const& words : today_alarms(today)) page += warning(words);
    for (auto const& tasks : by_chore(today.tasks)) page += chore_part(tasks, today);
    if (today.tasks.empty()) {
        page += wrap("Nothing to do until " + chore_words(today.until, measures) + ".");
    }
    return page + coming_part(today);
}

Page done_page(std::vector<Numbered> const& done, domain::Farm const& farm, std::string const& file) {
    Table table({Align::right, Align::left}, 1);
    for (Numbered const& one : done) table.add({std::to_string(one.number), placed(one.task, farm)});
    return wrap("Done, and written in " + escaped(file) + ":") + table;
}

}  // namespace cropful::reports
