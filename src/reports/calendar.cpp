#include "cropful/reports/calendar.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/caution_words.hpp"
#include "reports/ical.hpp"
#include "reports/json_parts.hpp"
#include "reports/task_words.hpp"

namespace cropful::reports {

namespace {

using engine::Moment;
using engine::Plan;
using engine::Task;
using engine::Work;
using quantities::Duration;

using Tasks = std::vector<Task>;

std::vector<Tasks> at_one_chore(Tasks const& tasks) {
    std::vector<Tasks> all;
    for (Task const& task : tasks) {
        if (all.empty() || all.back().front().at.iso() != task.at.iso()) all.emplace_back();
        all.back().push_back(task);
    }
    return all;
}

std::string short_words(Work work) {
    static std::map<Work, std::string> const all{{Work::look, "look in"},
                                                 {Work::top_up, "top up"},
                                                 {Work::change_water, "fresh water"},
                                                 {Work::stir, "stir"},
                                                 {Work::change_feed, "change feed"},
                                                 {Work::warmth, "warmth"},
                                                 {Work::move, "move"},
                                                 {Work::ready, "make ready"},
                                                 {Work::clean, "clean"},
                                                 {Work::remove, "birds go"},
                                                 {Work::withdrawal_ends, "withdrawal over"},
                                                 {Work::fetch, "fetch"}};
    return all.at(work);
}

/// "Move, change feed: April bobwhites; fresh water": what is not done every day first, and whose it is.
std::string summary_of(Tasks const& tasks) {
    std::vector<Work> works;
    std::set<std::string> hatches;
    for (Task const& task : tasks) {
        if (!ranges::contains(works, task.work)) works.push_back(task.work);
        if (!task.hatch.empty() && !engine::is_routine(task.work)) hatches.insert(task.hatch);
    }
    ranges::stable_sort(works, {}, [](Work work) { return engine::is_routine(work); });
    bool const more = works.size() > 1;
    std::vector<std::string> words;
    for (Work const work : works) {
        if (!(more && work == Work::look)) words.push_back(short_words(work));  // one looks in at every chore
    }
    std::string text = join(words);
    text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
    return hatches.empty() ? text : text + ": " + join(std::vector<std::string>(hatches.begin(), hatches.end()));
}

std::string description_of(Tasks const& tasks, domain::Farm const& farm) {
    std::vector<std::string> lines, notes;
    for (Task const& task : tasks) {
        std::string const place = task_place(task), until = task_until(task, farm.measures);
        lines.push_back((place.empty() ? "" : place + ": ") + task_words(task, farm) +
                        (until.empty() ? "" : ", " + until) + ".");
        std::string const note = task_notes(task, farm);
        if (!note.empty() && !ranges::contains(notes, note)) notes.push_back(note);
    }
    return join(lines, "\n") + (notes.empty() ? "" : "\n\n" + join(notes, "\n"));
}

/// Nothing of it is done every day: somebody must be told.
bool rings_at_all(Tasks const& tasks) {
    return ranges::any_of(tasks, [](Task const& task) { return !engine::is_routine(task.work); });
}

bool has_end_of_withdrawal(Tasks const& tasks) {
    return ranges::any_of(tasks, [](Task const& task) { return task.work == Work::withdrawal_ends; });
}

Event event_of(Tasks const& tasks, domain::Farm const& farm, std::optional<Duration> alarm) {
    Event event{.at = tasks.front().at, .summary = summary_of(tasks), .description = description_of(tasks, farm)};
    for (Task const& task : tasks) {
        std::string const category = short_words(task.work);
        if (!ranges::contains(event.categories, category)) {
            event.categories.push_back(category);
        }
        event.tasks.push_back(task.id);
    }
    if (!alarm || !rings_at_all(tasks)) return event;
    // what must not be early rings at its moment; all else at a chore
    event.rings = has_end_of_withdrawal(tasks) ? event.at : engine::last_chore(farm, event.at + -*alarm);
    return event;
}

/// What the pages print under every answer.
Event notes_event(Plan const& plan, Moment at) {
    std::string words =
        "Fills end at the sure end: of 20 flocks one is empty sooner. Fill before, not at, the hour, and look in every "
        "day all the same. Hours are those of the barn's clock.";
    if (!plan.cautions.empty()) words += "\n\nWATCH";
    for (CautionLine const& one : caution_lines(plan.cautions, plan.farm.measures)) words += "\n! " + one.text;
    words += "\n\nTHIS RESTS ON";
    for (AssumptionLine const& one : assumption_lines(plan.assumptions, plan.farm.measures)) {
        words += "\n- " + one.text + " [" + domain::name(one.source.standing) + "]";
    }
    return {.at = at,
            .summary = "Read first: what to watch, and what this calendar rests on",
            .description = words,
            .categories = {"notes"}};
}

/// Names of birds told by flags are those of their kind: their day of hatch tells them apart.
std::string farm_key(Plan const& plan) {
    return plan.farm.name.empty() ? plan.hatches.front().hatch.date.iso() : plan.farm.name;
}

std::string calendar_name(Plan const& plan) {
    return plan.farm.name.empty() ? plan.hatches.front().hatch.name : plan.farm.name;
}

std::vector<Event> events_of(engine::Agenda const& agenda, std::optional<Duration> alarm) {
    Plan const& plan = agenda.plan;
    std::vector<Event> events;
    for (Tasks const& tasks : at_one_chore(agenda.tasks)) events.push_back(event_of(tasks, plan.farm, alarm));
    Moment first = plan.hatches.front().hatch.date + first_age(plan.hatches.front());
    for (engine::HatchPlan const& hatch : plan.hatches) first = std::min(first, hatch.hatch.date + first_age(hatch));
    if (!events.empty()) first = std::min(first, events.front().at);
    events.insert(events.begin(), notes_event(plan, engine::last_chore(plan.farm, first)));
    for (Event& event : events) {
        std::string const what = event.categories == std::vector<std::string>{"notes"} ? "notes" : "chore";
        event.uid = fingerprint({farm_key(plan), what, what == "notes" ? "" : event.at.iso()}) + "@cropful";
    }
    return events;
}

}  // namespace

std::string calendar(engine::Agenda const& agenda, Moment written, std::optional<Duration> alarm,
                     std::string_view before) {
    auto events = events_of(agenda, alarm);
    for (Event const& gone : cancelled(before, calendar_name(agenda.plan), events, agenda.from, agenda.until))
        events.push_back(gone);
    return ical(calendar_name(agenda.plan), events, written);
}

std::string calendar_json(engine::Agenda const& agenda) {
    domain::Farm const& farm = agenda.plan.farm;
    Json json{{"farm", farm_name(farm)}, {"events", Json::array()}};
    for (Event const& event : events_of(agenda, std::nullopt)) {
        json["events"].push_back(Json{{"uid", event.uid},
                                      {"what", event.tasks.empty() ? "Notes" : "Chore"},
                                      {"hatch", nullptr},
                                      {"at", event.at.iso()},
                                      {"all_day", false},
                                      {"every_d", nullptr},
                                      {"times", 1},
                                      {"summary", event.summary},
                                      {"description", event.description},
                                      {"deeds", event.tasks}});
    }
    json["assumptions"] = notes(agenda.plan.assumptions, farm.measures);
    json["cautions"] = notes(agenda.plan.cautions, farm.measures);
    return printed(json);
}

}  // namespace cropful::reports
