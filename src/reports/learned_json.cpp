#include "reports/json_parts.hpp"

namespace cropful::reports {

Json learned_json(std::vector<engine::Learned> const& learned) {
    Json all = Json::array();
    for (engine::Learned const& one : learned) {
        all.push_back(Json{{"hatch", one.hatch},
                           {"feed_factor", one.feed},
                           {"feed_top_ups", one.feed_top_ups},
                           {"water_factor", one.water},
                           {"water_top_ups", one.water_top_ups},
                           {"birds", or_null(one.heads, quantities::in_birds)},
                           {"birds_at", one.heads_at ? Json(one.heads_at->iso()) : Json(nullptr)}});
    }
    return all;
}

Json intervals_json(std::vector<engine::Interval> const& intervals) {
    Json all = Json::array();
    for (engine::Interval const& one : intervals) {
        bool const feed = one.what == engine::Trait::feed;
        all.push_back(Json{{"hatch", one.hatch},
                           {"what", feed ? "feed" : "water"},
                           {"from", one.from.iso()},
                           {"until", one.to.iso()},
                           {feed ? "used_kg" : "used_l", one.used},
                           {feed ? "table_kg" : "table_l", one.table},
                           {feed ? "expected_kg" : "expected_l", one.expected},
                           {"sds", one.sds},
                           {"ran_empty", one.ran_empty},
                           {"miscounted", one.miscounted},
                           {"over_thrown", one.over_thrown},
                           {"alarm", one.alarm},
                           {"taught", one.taught}});
    }
    return all;
}

}  // namespace cropful::reports
