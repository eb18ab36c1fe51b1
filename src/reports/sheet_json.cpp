#include "cropful/reports/sheet_html.hpp"
#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using quantities::in_birds;
using quantities::in_days;
using quantities::in_grams;
using quantities::in_kilograms;

Json heads_json(engine::HatchSheet const& hatch) {
    Json all = Json::array();
    for (auto const& at : hatch.heads) all.push_back(Json{{"age_d", in_days(at.age)}, {"birds", in_birds(at.birds)}});
    return all;
}

Json sheet_days_json(engine::HatchSheet const& hatch) {
    Json all = Json::array();
    for (engine::DayFeed const& day : hatch.days) {
        all.push_back(Json{{"age_d", in_days(day.age)},
                           {"feed_kg", in_kilograms(day.central)},
                           {"p05", in_kilograms(day.band.p05)},
                           {"p50", in_kilograms(day.band.p50)},
                           {"p95", in_kilograms(day.band.p95)}});
    }
    return all;
}

Json protein_json(engine::HatchSheet const& hatch) {
    Json all = Json::array();
    for (engine::ProteinAt const& at : hatch.protein) {
        all.push_back(Json{{"age_d", in_days(at.age)},
                           {"given_g_per_bird_d", or_null(at.given, in_grams)},
                           {"need_g_per_bird_d", in_grams(at.need)}});
    }
    return all;
}

Json warmth_json(engine::HatchSheet const& hatch) {
    Json all = Json::array();
    for (rations::BroodingRow const& row : hatch.warmth) {
        all.push_back(Json{{"first_day", row.first_day},
                           {"last_day", row.last_day},
                           {"low_c", row.low.in_celsius()},
                           {"high_c", row.high.in_celsius()}});
    }
    return all;
}

Json room_json(engine::HatchSheet const& hatch) {
    Json all = Json::array();
    for (engine::RoomNeeded const& room : hatch.room) {
        all.push_back(Json{{"from_d", in_days(room.from)},
                           {"birds", in_birds(room.birds)},
                           {"floor_ft2", room.floor_square_feet},
                           {"feeder_ft", room.feeder_feet},
                           {"water_trough_ft", room.water_trough_feet},
                           {"gal_founts", or_null(room.founts)}});
    }
    return all;
}

Json bags_json(engine::HatchSheet const& hatch) {
    Json all = Json::array();
    for (auto const& bags : hatch.bags) all.push_back(or_null(bags));
    return all;
}

}  // namespace

std::string sheet_json(engine::Sheet const& sheet) {
    Json json{{"farm", sheet.plan.farm.name.empty() ? Json(nullptr) : Json(sheet.plan.farm.name)}};
    json["hatches"] = Json::array();
    for (std::size_t i = 0; i < sheet.hatches.size(); ++i) {
        engine::HatchSheet const& hatch = sheet.hatches[i];
        json["hatches"].push_back(Json{{"name", sheet.plan.hatches[i].hatch.name},
                                       {"bags", bags_json(hatch)},
                                       {"heads", heads_json(hatch)},
                                       {"days", sheet_days_json(hatch)},
                                       {"protein", protein_json(hatch)},
                                       {"warmth", warmth_json(hatch)},
                                       {"room", room_json(hatch)},
                                       {"cautions", notes(hatch.cautions, sheet.plan.farm.measures)}});
    }
    json["assumptions"] = notes(sheet.assumptions, sheet.plan.farm.measures);
    json["cautions"] = notes(sheet.cautions, sheet.plan.farm.measures);
    return printed(json);
}

}  // namespace cropful::reports
