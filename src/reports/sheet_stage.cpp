#include <algorithm>

#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/check_page.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/sheet_parts.hpp"
#include "reports/task_words.hpp"

namespace cropful::reports {

namespace {

using engine::HatchPlan;
using engine::Moment;
using engine::Sheet;
using engine::StagePlan;
using engine::Task;
using engine::Work;
using quantities::Duration;
using quantities::Measures;

constexpr std::size_t most_columns = 8;  // of houses; more share one

/// One page: a stage of a hatch, in all its houses or in one.
struct StagePage {
    HatchPlan const& hatch;
    StagePlan const& stage;
    std::vector<Task> tasks;
    std::optional<int> house;  // its number
    std::string id;
};

/// What is done in one of the houses that share it equally.
Task in_one_house(Task task, int number) {
    double const share = 1.0 / std::max(1, task.houses);
    if (task.house.empty()) return task;
    task.vessels = std::max(task.vessels > 0 ? 1 : 0, task.vessels / std::max(1, task.houses));
    if (task.feed) task.feed = *task.feed * share;
    if (task.birds) task.birds = *task.birds * share;
    task.houses = 1;
    task.numbers = {number};
    return task;
}

std::vector<int> columns_of(StagePage const& page) {
    if (page.house) return {*page.house};
    return page.stage.numbers.size() > most_columns ? std::vector<int>() : page.stage.numbers;
}

/// "90 to 95 F" on a day under heat; empty later.
std::string air_on(Sheet const& sheet, HatchPlan const& hatch, Moment day) {
    double const age = quantities::in_days(Moment(day.date()) - Moment(hatch.hatch.date.date()));
    auto const& rows = sheet.warmth.at(hatch.hatch.kind);
    if (age + 1 >= rows.back().first_day) return "";  // the barn's air does
    for (rations::BroodingRow const& row : rows) {
        if (age + 1 < row.first_day || age + 1 >= row.last_day + 1) continue;
        return warmth_words(row, sheet.plan.farm.measures);
    }
    return "";
}

/// A box and what it is for, the hour first where it is not the day's first chore.
Element task_line(Task const& task, std::string const& hour, domain::Farm const& farm) {
    Element line("div", "tick");
    line.add(box()).text(" " + hour + task_words(task, farm));
    return line;
}

/// The day, and the air its chicks need.
Element day_head(Moment day, std::string const& air) {
    Element head("th");
    head.set("scope", "row").add(Element("div", "when", day.day()));
    if (!air.empty()) head.add(Element("div", "air", air));
    return head;
}

/// A box for each look.
Element looks_cell(std::vector<std::string> const& hours) {
    Element cell("td", "looks");
    for (std::string const& hour : hours) {
        Element one("div", "ticks");
        cell.add(one.add(box()).text(" " + hour));
    }
    return cell;
}

/// A row for every day: boxes for each look, what is done, and blanks to write in.
Element days_table(StagePage const& page, Sheet const& sheet) {
    domain::Farm const& farm = sheet.plan.farm;
    auto const columns = columns_of(page);
    std::vector<std::string> heads{"Day", "Look", "Do"};
    if (columns.empty()) heads.emplace_back("Dead");
    for (int const number : columns) heads.push_back("Dead " + std::to_string(number));
    heads.emplace_back("Fed");
    HtmlTable table("Tick what is done; write down the dead, and the weight of feed put in.", heads, "days");
    for (auto task = page.tasks.begin(); task != page.tasks.end();) {
        Moment const day = task->at;
        std::string const first = chore_hour(day, farm.measures);
        std::vector<std::string> looks;
        Element does("td");
        for (; task != page.tasks.end() && task->at.date() == day.date(); ++task) {
            std::string const hour = chore_hour(task->at, farm.measures);
            if (task->work == Work::look) {
                looks.push_back(hour);
            } else {
                does.add(task_line(*task, hour == first ? "" : hour + ": ", farm));
            }
        }
        Element& row = table.row(day_head(day, air_on(sheet, page.hatch, day)));
        row.add(looks_cell(looks)).add(std::move(does));
        for (std::size_t i = 0; i < std::max<std::size_t>(1, columns.size()) + 1; ++i) row.add(Element("td", "blank"));
    }
    return table.element();
}

void add_warnings(Element& body, Sheet const& sheet, HatchPlan const& hatch) {
    Measures const measures = sheet.plan.farm.measures;
    std::vector<std::string> lines = label_faults(hatch);
    for (auto const& alarm : sheet.plan.alarms) {
        if (alarm.hatch == hatch.hatch.name) lines.push_back(alarm_words(alarm, measures));
    }
    if (!lines.empty()) body.add(list_of(lines, "cautions"));
}

std::vector<std::string> notes_of(StagePage const& page, domain::Farm const& farm) {
    std::vector<std::string> notes;
    for (Task const& task : page.tasks) {
        std::string const note = task_notes(task, farm);
        if (!note.empty() && !ranges::contains(notes, note)) notes.push_back(note);
    }
    return notes;
}

std::string title_of(StagePage const& page) {
    std::string words = page.hatch.hatch.name;
    if (!page.stage.house) return words;
    auto const numbers = page.house ? std::vector<int>{*page.house} : page.stage.numbers;
    return words + ", " + houses_words(*page.stage.house, page.stage.houses, numbers);
}

Element page_of(StagePage const& page, Sheet const& sheet) {
    std::string const title = title_of(page);
    Element body("div", "page");
    body.add(Element("h2", "", title).set("id", page.id + "-title"));
    std::string const all = hatch_words(page.hatch);
    body.add(Element("p", "about", all.substr(page.hatch.hatch.name.size() + 2)));
    add_warnings(body, sheet, page.hatch);
    body.add(days_table(page, sheet));
    auto const notes = notes_of(page, sheet.plan.farm);
    if (!notes.empty()) body.add(list_of(notes, "notes"));
    return section({page.id, title, std::move(body)}, sheet.plan);
}

/// The stage on whose page a task stands: the one that runs then; what comes before the first is on the first's.
std::size_t stage_of(HatchPlan const& hatch, Task const& task) {
    std::size_t number = 0;
    for (std::size_t i = 0; i < hatch.stages.size(); ++i) {
        bool const begun = hatch.hatch.date + hatch.stages[i].from <= task.at + quantities::days(1e-6);
        bool const moved_in = task.house == hatch.stages[i].house && task.work != Work::ready && begun;
        if (begun || moved_in) number = i;
    }
    return number;
}

}  // namespace

std::vector<SheetLink> stage_pages(Sheet const& sheet, Houses houses, Element& sheets) {
    std::vector<SheetLink> links;
    for (std::size_t h = 0; h < sheet.plan.hatches.size(); ++h) {
        HatchPlan const& hatch = sheet.plan.hatches[h];
        std::vector<std::vector<Task>> tasks(hatch.stages.size());
        for (Task const& task : sheet.tasks) {
            if (task.hatch == hatch.hatch.name && !tasks.empty()) tasks[stage_of(hatch, task)].push_back(task);
        }
        for (std::size_t i = 0; i < tasks.size(); ++i) {
            if (tasks[i].empty()) continue;
            std::vector<std::optional<int>> pages{std::nullopt};
            auto const& numbers = hatch.stages[i].numbers;
            if (houses == Houses::apart && !numbers.empty()) pages.assign(numbers.begin(), numbers.end());
            for (auto const& house : pages) {
                std::string const id =
                    hatch_id(h) + "-" + std::to_string(i + 1) + (house ? "-" + std::to_string(*house) : std::string());
                StagePage page{hatch, hatch.stages[i], tasks[i], house, id};
                if (house) {
                    for (Task& task : page.tasks) task = in_one_house(std::move(task), *house);
                }
                sheets.add(page_of(page, sheet));
                links.push_back({id, title_of(page)});
            }
        }
    }
    return links;
}

}  // namespace cropful::reports
