#include "cropful/reports/today_page.hpp"
#include "reports/json_parts.hpp"
#include "reports/task_words.hpp"

namespace cropful::reports {

namespace {

using engine::Task;

Json word_or_null(std::string const& word) { return word.empty() ? Json(nullptr) : Json(word); }

/// What is common to deeds of a chore and to what is coming.
Json task_json(Task const& task, domain::Farm const& farm) {
    Json json{{"id", task.id},
              {"deed", engine::name(task.work)},
              {"hatch", word_or_null(task.hatch)},
              {"house", word_or_null(task.house)},
              {"numbers", task.numbers},
              {"vessel", word_or_null(task.vessel)}};
    if (task.feed) json["amount_kg"] = quantities::in_kilograms(*task.feed);
    if (task.water) json["amount_l"] = quantities::in_litres(*task.water);
    if (task.birds) json["birds"] = quantities::in_birds(*task.birds);
    if (task.packs) {
        json["count"] = *task.packs;
    } else if (task.vessels > 0) {
        json["count"] = task.vessels;
    } else if (!task.house.empty()) {
        json["count"] = task.houses;
    }
    json["what"] = word_or_null(task.what);
    json["until"] = task.until ? Json(task.until->iso()) : Json(nullptr);
    json["why"] = engine::name(task.why);
    json["overdue"] = task.overdue;
    json["words"] = task_words(task, farm);
    return json;
}

}  // namespace

std::string today_json(engine::Today const& today) {
    domain::Farm const& farm = today.plan.farm;
    Json json{{"farm", farm_name(farm)}, {"now", today.now.iso()}, {"until", today.until.iso()}};
    json["alarms"] = today_alarms(today);
    json["chores"] = Json::array();
    for (engine::Numbered const& one : today.tasks) {
        std::string const at = one.task.at.iso();
        Json& chores = json["chores"];
        if (chores.empty() || chores.back()["at"] != at) chores.push_back({{"at", at}, {"deeds", Json::array()}});
        Json deed{{"n", one.number}};
        deed.update(task_json(one.task, farm));
        chores.back()["deeds"].push_back(std::move(deed));
    }
    json["coming"] = Json::array();
    for (Task const& task : today.coming) {
        Json one{{"at", task.at.iso()}};
        one.update(task_json(task, farm));
        json["coming"].push_back(std::move(one));
    }
    return printed(json);
}

}  // namespace cropful::reports
