#include "cropful/reports/away_json.hpp"

#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using engine::Holding;
using quantities::in_days;

char const* call_word(engine::Call call) {
    switch (call) {
        case engine::Call::hatching:
            return "hatching";
        case engine::Call::under_heat:
            return "under heat";
        case engine::Call::leaving:
            return "leaving";
    }
    return "";
}

Json holding_json(Holding const& holding, engine::Absence const& absence) {
    bool const feed = std::holds_alternative<quantities::Mass>(holding.content);
    return {{"hatch", holding.hatch},
            {feed ? "hopper" : "drinker", holding.vessel},
            {"count", holding.count},
            {"at", holding.from.iso()},
            {"age_d", in_days(holding.age)},
            {"birds", quantities::in_birds(holding.birds)},
            {feed ? "content_kg" : "content_l", domain::number(holding.content)},
            {"known", holding.known},
            {"chance", holding.chance},
            {feed ? "leave_kg" : "leave_l", domain::number(holding.leave)},
            {"leave_pct", 100 * holding.fill},
            {"more", holding.more},
            {"p05", or_null(holding.lasts.p05, in_days)},
            {"p50", or_null(holding.lasts.p50, in_days)},
            {"p95", or_null(holding.lasts.p95, in_days)},
            {"come_by", holding.safe_for ? Json((holding.from + *holding.safe_for).iso()) : Json(nullptr)},
            {"holds", holding.chance >= absence.sure}};
}

}  // namespace

std::string away_json(engine::Away const& away) {
    Json json{{"farm", away.farm.name.empty() ? Json(nullptr) : Json(away.farm.name)},
              {"from", away.absence.from.iso()},
              {"until", away.absence.until.iso()},
              {"sure_pct", 100 * away.absence.sure},
              {"chance", away.chance},
              {"come_by", away.come_by ? Json(away.come_by->iso()) : Json(nullptr)},
              {"come_at", away.come_at ? Json(away.come_at->iso()) : Json(nullptr)},
              {"first", Json(nullptr)},
              {"somebody_there", Json::array()},
              {"vessels", Json::array()}};
    for (Holding const& holding : away.holdings) json["vessels"].push_back(holding_json(holding, away.absence));
    if (away.first) {
        Holding const& first = away.holdings[*away.first];
        json["first"] = {{"hatch", first.hatch}, {"vessel", first.vessel}};
    }
    for (engine::Errand const& errand : away.errands) {
        json["somebody_there"].push_back(
            {{"hatch", errand.hatch}, {"why", call_word(errand.call)}, {"at", errand.at.iso()}});
    }
    json["learned"] = learned_json(away.learned);
    json["alarms"] = intervals_json(away.alarms);
    json["assumptions"] = notes(away.assumptions, away.farm.measures);
    json["cautions"] = notes(away.cautions, away.farm.measures);
    return printed(json);
}

}  // namespace cropful::reports
