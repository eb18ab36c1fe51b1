#include "cropful/reports/table_json.hpp"

#include <utility>

#include "cropful/domain/nutrient.hpp"
#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using quantities::in_days;
using quantities::in_kilocalories_per_kilogram;
using rations::Kind;

Json with_source(Json json, domain::Source const& source) {
    json.update(to_json(source));
    return json;
}

Json rows(curves::Curve const& curve) {
    Json all = Json::array();
    for (curves::Row const& row : curve.rows()) all.push_back(Json::array({row.age_d, row.low, row.central, row.high}));
    return all;
}

Json heat(rations::HeatResponse const& response) {
    Json json{{"per_degree_c", quantities::ratio(response.per_degree * quantities::kelvins(1))},
              {"above_c", response.above.in_celsius()}};
    return with_source(json, response.source);
}

Json brooding(rations::Brooding const& brooding) {
    Json all = Json::array();
    for (rations::BroodingRow const& row : brooding.rows) {
        all.push_back(Json{{"first_day", row.first_day},
                           {"last_day", row.last_day},
                           {"low_c", row.low.in_celsius()},
                           {"high_c", row.high.in_celsius()}});
    }
    Json json;
    json["rows"] = all;
    return with_source(json, brooding.source);
}

Json space(rations::Space const& space) {
    Json all = Json::array();
    for (rations::SpaceRow const& row : space.rows) {
        all.push_back(Json{{"from_d", in_days(row.from)},
                           {"birds_per_ft2", row.birds_per_square_foot},
                           {"feeder_in_per_bird", row.feeder_inches_per_bird}});
    }
    Json json;
    json["rows"] = all;
    json["birds_per_ft_of_water_trough"] = space.birds_per_foot_of_water_trough;
    json["day_olds_per_three_gal_founts"] = space.day_olds_per_three_founts;
    json["note"] = space.note;
    return with_source(json, space.source);
}

Json laying(Kind const& kind) {
    if (!kind.laying) return nullptr;
    return with_source(
        {{"g_per_bird_d", kind.laying->rate}, {"kcal_per_kg", in_kilocalories_per_kilogram(kind.laying->energy)}},
        kind.laying->source);
}

Json growing(Kind const& kind) {
    Json json{{"kcal_per_kg", in_kilocalories_per_kilogram(kind.growing.energy)},
              {"columns", {"age_d", "low_g_per_bird_d", "central_g_per_bird_d", "high_g_per_bird_d"}},
              {"rows", rows(kind.growing.curve)},
              {"caution", kind.growing.caution}};
    return with_source(json, kind.growing.source);
}

Json mortality(Kind const& kind) {
    Json json{{"columns", {"age_d", "low_pct", "central_pct", "high_pct"}}, {"rows", rows(kind.mortality.curve)}};
    return with_source(json, kind.mortality.source);
}

Json phase(rations::Phase const& phase) {
    Json needs = Json::array();
    for (rations::Need const& need : phase.needs) {
        needs.push_back(Json{{"nutrient", need.nutrient},
                             {"need", need.level},
                             {"unit", unit_of(need.nutrient)},
                             {"found", need.found}});
    }
    return {{"phase", phase.name},
            {"laying", phase.laying},
            {"from_d", in_days(phase.from)},
            {"to_d", or_null(phase.to, in_days)},
            {"kcal_per_kg", in_kilocalories_per_kilogram(phase.energy)},
            {"needs", needs}};
}

Json table(rations::NeedsTable const& needs) {
    Json phases = Json::array(), others = Json::array();
    for (rations::Phase const& one : needs.phases) phases.push_back(phase(one));
    for (rations::NeedsNote const& note : needs.notes) {
        others.push_back(
            with_source({{"phase", note.phase}, {"nutrient", note.nutrient}, {"says", note.says}}, note.source));
    }
    Json json{
        {"table", needs.key}, {"title", needs.title}, {"basis", needs.basis}, {"phases", phases}, {"notes", others}};
    return with_source(json, needs.source);
}

Json drug_json(rations::Drug const& drug) {
    Json levels = Json::array();
    for (quantities::Mass const& mass : drug.per_short_ton) levels.push_back(quantities::in_grams(mass));
    Json json{{"drug", drug.name},
              {"also", drug.also},
              {"birds", drug.birds},
              {"growing_only", drug.growing_only},
              {"max_age_d", or_null(drug.max_age, in_days)},
              {"g_per_short_ton", levels},
              {"not_for_layers", drug.not_for_layers},
              {"danger", drug.danger},
              {"limits", drug.limits},
              {"banned", drug.banned},
              {"in_water", drug.in_water},
              {"water_limits", drug.water_limits}};
    return with_source(json, drug.source);
}

/// The key of a limit's level, and what turns the level into its unit.
std::pair<char const*, double> limit_unit(rations::Limit const& limit) {
    auto const* nutrient = domain::find_nutrient(limit.key.substr(0, limit.key.rfind('_')));
    if (nutrient->unit == domain::NutrientUnit::milligrams_per_kilogram) return {"mg_per_kg", 1};
    return nutrient->unit == domain::NutrientUnit::percent ? std::pair{"fraction", 0.01} : std::pair{"iu_per_kg", 1.0};
}

/// `{name: [one(item), ...]}`
template <class Items, class One>
std::string list(char const* name, Items const& items, One one) {
    Json json;
    json[name] = Json::array();
    for (auto const& item : items) json[name].push_back(one(item));
    return printed(json);
}

}  // namespace

std::string index_json(std::vector<std::string> const& lists) {
    return list("tables", lists, [](std::string const& name) { return Json(name); });
}

std::string kinds_json(std::vector<Kind> const& kinds) {
    return list("kinds", kinds, [](Kind const& kind) {
        return Json{{"kind", kind.key}, {"title", kind.title}, {"latin", kind.latin}, {"also", kind.also}};
    });
}

std::string kind_json(Kind const& kind, rations::NeedsTable const& needs) {
    rations::HatchRate const& rate = kind.hatch_rate;
    Json hatching{{"value", rate.value}, {"low", rate.low}, {"high", rate.high}, {"note", rate.note}};
    Json json{{"kind", kind.key},
              {"title", kind.title},
              {"latin", kind.latin},
              {"also", kind.also},
              {"growing", growing(kind)},
              {"laying", laying(kind)},
              {"mortality", mortality(kind)},
              {"hatch_rate", with_source(hatching, rate.source)},
              {"feed_energy", with_source({{"elasticity", kind.feed_energy.elasticity}}, kind.feed_energy.source)},
              {"water_heat", heat(kind.water_heat)},
              {"feed_heat", heat(kind.feed_heat)},
              {"brooding", brooding(kind.brooding)},
              {"space", space(kind.space)}};
    Json water;
    water["ml_per_g"] = kind.water.ratio;
    json["water"] = with_source(water, kind.water.source);
    json["needs"] = table(needs);
    json["needs_standing"] = to_json(kind.needs_source);
    return printed(json);
}

std::string needs_list_json(std::vector<rations::NeedsTable> const& tables) {
    return list("needs", tables, [](rations::NeedsTable const& needs) { return table(needs); });
}

std::string needs_json(rations::NeedsTable const& needs) { return printed(table(needs)); }

std::string units_json(std::span<quantities::Unit const> units) {
    return list("units", units, [](quantities::Unit const& unit) {
        return Json{{"symbol", unit.symbol}, {"also", unit.also},   {"dimension", unit.dimension},
                    {"factor", unit.factor}, {"exact", unit.exact}, {"source", unit.source}};
    });
}

std::string drugs_json(std::vector<rations::Drug> const& drugs) { return list("drugs", drugs, drug_json); }

std::string limits_json(std::vector<rations::Limit> const& limits) {
    return list("limits", limits, [](rations::Limit const& limit) {
        Json json{{"limit", limit.key}, {"applies", limit.applies}};
        auto const [unit, scale] = limit_unit(limit);
        json[unit] = limit.level * scale;
        json["stop"] = limit.stop;
        json["words"] = limit.words;
        json["meaning"] = limit.meaning;
        return with_source(json, limit.source);
    });
}

std::string water_table_json(rations::WaterTable const& water) {
    Json json;
    json["water"] = water_rows_json(water);
    auto const factor = [&](char const* key, rations::WaterFactor const& one) {
        json[key] = with_source({{"factor", one.factor}}, one.source);
    };
    factor("nitrate_of_nitrogen", water.nitrate);
    factor("tds_mg_per_l_of_ds_per_m", water.tds);
    factor("tds_mg_per_l_of_ds_per_m_above_5", water.strong_tds);
    factor("sodium_of_hardness", water.softener);
    json["chlorine"] = with_source({{"least_mg_per_l", quantities::in_milligrams_per_litre(water.chlorine.least)},
                                    {"most_mg_per_l", quantities::in_milligrams_per_litre(water.chlorine.most)}},
                                   water.chlorine.source);
    return printed(json);
}

std::string forms_json(std::map<std::string, rations::FormDensity> const& forms) {
    return list("forms", forms, [](auto const& named) {
        auto const& [name, form] = named;
        Json densities = Json::array();
        for (auto const& density : form.density) densities.push_back(quantities::in_kilograms_per_litre(density));
        return with_source({{"form", name}, {"kg_per_l", densities}}, form.source);
    });
}

std::string powders_json(std::vector<rations::Powder> const& powders) {
    return list("powders", powders, [](rations::Powder const& powder) {
        return with_source(
            {{"powder", powder.name}, {"g_per_tsp", quantities::in_grams(powder.teaspoonful())}, {"note", powder.note}},
            powder.source);
    });
}

}  // namespace cropful::reports
