#include "reports/agenda.hpp"

#include <algorithm>
#include <map>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/calendar.hpp"
#include "cropful/reports/fills_part.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/caution_words.hpp"
#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using engine::HatchPlan;
using engine::Moment;
using engine::Plan;
using quantities::days;
using quantities::Duration;
using quantities::Measures;
using quantities::print;

void add_hatching(std::vector<Event>& events, HatchPlan const& hatch) {
    if (first_age(hatch) > days(0)) return;
    std::string const& name = hatch.hatch.name;
    events.push_back({"", "Hatch", name, "", hatch.hatch.date, "Hatch: " + name,
                      hatch_words(hatch) + ". Warm the brooder and set out feed and water before they are in."});
}

void add_brooding(std::vector<Event>& events, HatchPlan const& hatch, rations::Brooding const& brooding,
                  Measures measures) {
    for (rations::BroodingRow const& row : brooding.rows) {
        Duration const from = days(row.first_day - 1);
        if (from < first_age(hatch) || from >= last_age(hatch)) continue;
        std::string const low = print(row.low, measures), high = print(row.high, measures);
        std::string const air = row.low < row.high ? low + " to " + high : low;
        bool const last = &row == &brooding.rows.back();
        events.push_back({"", "Brooder", hatch.hatch.name, std::to_string(row.first_day), hatch.hatch.date + from,
                          (last ? "Barn air " : "Brooder ") + air + ": " + hatch.hatch.name,
                          "Air at chick height from day " + std::to_string(row.first_day) +
                              " of life on. Go by the chicks more than by the thermometer: huddled they are cold, "
                              "panting and far from the lamp they are hot, and either kills. " +
                              sourced(brooding.source)});
    }
}

void add_feed_changes(std::vector<Event>& events, HatchPlan const& hatch, domain::Farm const& farm) {
    for (std::size_t i = 1; i < hatch.feeds.size(); ++i) {
        engine::FeedNeed const& now = hatch.feeds[i];
        domain::Feed const& feed = farm.feeds.at(now.feed);
        std::string words = feed_title(farm, now.feed) + " instead of " + feed_title(farm, hatch.feeds[i - 1].feed) +
                            " from " + quantities::print_age(now.from) + " on.";
        Moment at = hatch.hatch.date + now.from;
        for (engine::StagePlan const& stage : hatch.stages) {
            bool const here = stage.from <= now.from && now.from < stage.to;
            if (!here || !stage.hoppers) continue;
            auto const* fill = fill_at(*stage.hoppers, now.from);
            words += "\n" + refill_words(*stage.hoppers, fill, farm.measures);
            if (fill) at = fill->do_at;
        }
        if (feed.medicated) {
            words += "\nIt is medicated with " + feed.medicated->drug +
                     ". The label, your veterinarian and local law decide.";
        }
        events.push_back({"", "Feed", hatch.hatch.name, now.feed, at,
                          "Change to " + feed_title(farm, now.feed) + ": " + hatch.hatch.name, words});
    }
}

Moment start_moment(HatchPlan const& hatch) { return hatch.hatch.date + first_age(hatch); }

/// What the pages print under every answer.
Event notes_event(Plan const& plan) {
    Moment from = start_moment(plan.hatches.front());
    for (HatchPlan const& hatch : plan.hatches) from = std::min(from, start_moment(hatch));
    std::string words =
        "Fills end at the sure end: of 20 flocks one is empty sooner. Fill before, not at, the hour, and look in every "
        "day all the same. Hours are those of the barn's clock.";
    if (!plan.cautions.empty()) words += "\n\nWATCH";
    for (CautionLine const& one : caution_lines(plan.cautions, plan.farm.measures)) words += "\n! " + one.text;
    words += "\n\nTHIS RESTS ON";
    for (AssumptionLine const& one : assumption_lines(plan.assumptions, plan.farm.measures)) {
        words += "\n- " + one.text + " [" + domain::name(one.source.standing) + "]";
    }
    return {"", "Notes", "", "", from, "Read first: what to watch, and what this calendar rests on", words};
}

/// Names of birds told by flags are those of their kind: their day of hatch tells them apart.
std::string farm_key(Plan const& plan) {
    return plan.farm.name.empty() ? plan.hatches.front().hatch.date.iso() : plan.farm.name;
}

void give_uids(std::vector<Event>& events, std::string const& farm) {
    std::map<std::vector<std::string>, int> alike;
    for (Event& event : events) {
        std::vector<std::string> parts{farm, event.hatch, event.what, event.which};
        parts.push_back(std::to_string(++alike[parts]));
        event.uid = fingerprint(parts) + "@cropful";
    }
}

std::string calendar_name(Plan const& plan) {
    return plan.farm.name.empty() ? plan.hatches.front().hatch.name : plan.farm.name;
}

}  // namespace

std::vector<Event> agenda(Plan const& plan, rations::Rations const& rations) {
    std::vector<Event> events{notes_event(plan)};
    add_shopping(events, plan);
    for (HatchPlan const& hatch : plan.hatches) {
        add_hatching(events, hatch);
        add_brooding(events, hatch, rations.kinds.at(hatch.hatch.kind).brooding, plan.farm.measures);
        add_feed_changes(events, hatch, plan.farm);
        add_hoppers(events, hatch, plan.farm);
        add_drinkers(events, hatch, plan.farm);
        add_mixing(events, hatch, plan.farm);
        add_withdrawals(events, hatch, plan.farm);
    }
    std::stable_sort(events.begin(), events.end(), [](Event const& a, Event const& b) { return a.at < b.at; });
    give_uids(events, farm_key(plan));
    return events;
}

std::string calendar(Plan const& plan, rations::Rations const& rations, Moment written, std::optional<Duration> alarm) {
    return ical(calendar_name(plan), agenda(plan, rations), {written, alarm});
}

std::string calendar_json(Plan const& plan, rations::Rations const& rations) {
    Json json{{"farm", plan.farm.name.empty() ? Json(nullptr) : Json(plan.farm.name)}, {"events", Json::array()}};
    for (Event const& event : agenda(plan, rations)) {
        json["events"].push_back(Json{{"uid", event.uid},
                                      {"what", event.what},
                                      {"hatch", event.hatch.empty() ? Json(nullptr) : Json(event.hatch)},
                                      {"at", event.at.iso()},
                                      {"all_day", event.all_day()},
                                      {"every_d", event.times > 1 ? Json(event.every_days) : Json(nullptr)},
                                      {"times", event.times},
                                      {"summary", event.summary},
                                      {"description", event.description}});
    }
    json["assumptions"] = notes(plan.assumptions, plan.farm.measures);
    json["cautions"] = notes(plan.cautions, plan.farm.measures);
    return printed(json);
}

}  // namespace cropful::reports
