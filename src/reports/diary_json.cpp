#include "cropful/reports/diary_json.hpp"

#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using domain::Entry;

template <class Unit, class In>
Json amount_json(Entry const& entry, In in) {
    auto const* found = std::get_if<Unit>(&entry.amount);
    return found ? Json(in(*found)) : Json(nullptr);
}

Json entries(std::vector<Entry> const& all) {
    Json list = Json::array();
    for (Entry const& entry : all) {
        list.push_back(Json{{"at", entry.at.iso()},
                            {"hatch", entry.hatch},
                            {"what", domain::name(entry.deed)},
                            {"feed_kg", amount_json<quantities::Mass>(entry, quantities::in_kilograms)},
                            {"water_l", amount_json<quantities::Volume>(entry, quantities::in_litres)},
                            {"birds", amount_json<quantities::Heads>(entry, quantities::in_birds)},
                            {"note", entry.note}});
    }
    return list;
}

}  // namespace

std::string diary_json(engine::Lessons const& lessons, std::vector<engine::Ended> const& ended,
                       domain::Diary const& diary, std::string const& file) {
    Json json{{"farm", lessons.farm.name}, {"diary", file}, {"entries", entries(diary)}};
    json["intervals"] = intervals_json(lessons.intervals);
    json["learned"] = learned_json(lessons.learned);
    json["alarms"] = intervals_json(lessons.alarms());
    json["ended"] = Json::array();
    for (engine::Ended const& one : ended) {
        json["ended"].push_back(Json{{"hatch", one.hatch},
                                     {"from", one.from.iso()},
                                     {"until", one.until.iso()},
                                     {"put_in_kg", quantities::in_kilograms(one.put_in)},
                                     {"expected_kg", quantities::in_kilograms(one.expected)},
                                     {"from_start", one.from_start}});
    }
    json["strangers"] = lessons.strangers;
    return printed(json);
}

std::string written_json(std::vector<Entry> const& visit, std::string const& file,
                         std::vector<std::string> const& advice) {
    Json json{{"diary", file}, {"entries", entries(visit)}};
    json["advice"] = advice;
    return printed(json);
}

std::string removed_json(std::vector<Entry> const& visit, std::string const& file) {
    return printed(Json{{"diary", file}, {"removed", entries(visit)}});
}

std::string edited_json(Entry const& was, std::optional<Entry> const& now, std::string const& file) {
    Json json{{"diary", file}, {"was", entries({was}).front()}};
    json["now"] = now ? entries({*now}).front() : Json(nullptr);
    return printed(json);
}

std::string imported_json(int added, int known, std::string const& file) {
    return printed(Json{{"diary", file}, {"added", added}, {"there_already", known}});
}

}  // namespace cropful::reports
