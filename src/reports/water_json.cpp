#include "cropful/reports/plan_json.hpp"
#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using quantities::in_milligrams_per_litre;

/// The source and standing of a row, or null.
void add_source(Json& json, std::optional<engine::WaterRow> const& row) {
    if (row) {
        json.update(to_json(row->source));
    } else {
        json.update(Json{{"source", nullptr}, {"standing", nullptr}});
    }
}

}  // namespace

Json water_json(std::vector<engine::WaterFinding> const& findings) {
    Json all = Json::array();
    for (engine::WaterFinding const& one : findings) {
        Json json{{"item", one.figure.item},
                  {"value", one.figure.value},
                  {"unit", domain::find_water_item(one.figure.item)->unit},
                  {"grade", name(one.grade)},
                  {"from", one.row ? Json(one.row->level) : Json(nullptr)},
                  {"applies", one.row ? Json(one.row->applies) : Json(nullptr)},
                  {"hatch", one.hatch},
                  {"kind", one.kind},
                  {"age_d", quantities::in_days(one.age)}};
        add_source(json, one.row);
        all.push_back(std::move(json));
    }
    return all;
}

Json sodium_json(engine::SodiumSum const& sum) {
    Json json{{"well_mg_per_l", or_null(sum.well, in_milligrams_per_litre)},
              {"softener_mg_per_l", or_null(sum.softener, in_milligrams_per_litre)},
              {"product_mg_per_l", or_null(sum.product, in_milligrams_per_litre)},
              {"sum_mg_per_l", in_milligrams_per_litre(sum.sum)},
              {"grade", name(sum.grade)},
              {"supplement", sum.supplement.empty() ? Json(nullptr) : Json(sum.supplement)},
              {"hatch", sum.hatch.empty() ? Json(nullptr) : Json(sum.hatch)}};
    add_source(json, sum.row);
    return json;
}

std::string chlorine_json(engine::ChlorineDose const& dose, std::vector<engine::Caution> const& cautions,
                          quantities::Measures measures) {
    Json const chlorine{{"chlorine_mg_per_l", in_milligrams_per_litre(dose.wanted)},
                        {"bleach_pct", 100 * dose.bleach},
                        {"water_l", quantities::in_litres(dose.water)},
                        {"water_parts", dose.proportioner ? Json(1 / dose.proportioner->share() - 1) : Json(nullptr)},
                        {"product_ml", quantities::in_millilitres(dose.product())}};
    return printed({{"chlorine", chlorine}, {"assumptions", Json::array()}, {"cautions", notes(cautions, measures)}});
}

Json water_rows_json(rations::WaterTable const& table) {
    Json all = Json::array();
    for (rations::WaterRow const& row : table.rows) {
        Json json{{"item", row.item},
                  {"unit", row.unit},
                  {"applies", row.applies},
                  {row.below ? "below" : "above", row.level},
                  {"grade", name(row.grade)},
                  {"kinds", row.kinds},
                  {"from_d", quantities::in_days(row.from)},
                  {"until_d", or_null(row.until, quantities::in_days)},
                  {"layers", or_null(row.layers)},
                  {"people", row.people},
                  {"meaning", row.meaning}};
        json.update(to_json(row.source));
        all.push_back(std::move(json));
    }
    return all;
}

}  // namespace cropful::reports
