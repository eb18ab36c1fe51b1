#include "reports/json_parts.hpp"

#include "cropful/domain/nutrient.hpp"
#include "reports/caution_words.hpp"

namespace cropful::reports {

namespace {

using engine::Check;
using engine::Dose;
using engine::Verdict;
using quantities::in_days;
using quantities::in_grams;
using quantities::in_millilitres;

void add_dose(Json& json, Dose const& dose) {
    json["water_l"] = quantities::in_litres(dose.water);
    json["product_g"] = or_null(dose.by_weight, in_grams);
    json["product_ml"] = or_null(dose.by_volume, in_millilitres);
    json["stock_ml"] = or_null(dose.stock, in_millilitres);
    json["stock_product_ml"] = or_null(dose.stock ? dose.by_volume : std::nullopt, in_millilitres);
    json["stock_product_g"] = or_null(dose.stock ? dose.by_weight : std::nullopt, in_grams);
}

Json batch_json(engine::Batch const& batch) {
    Json json{{"at", batch.at.iso()},
              {"age_d", in_days(batch.age)},
              {"lasts_d", in_days(batch.lasts)},
              {"drunk_l", quantities::in_litres(batch.drunk)},
              {"drunk_p95_l", quantities::in_litres(batch.drunk_p95)},
              {"each_drinker_l", quantities::in_litres(batch.each_drinker)},
              {"thrown_l", quantities::in_litres(batch.thrown)}};
    add_dose(json, batch.dose);
    return json;
}

/// Label, need and shortage under the keys of protein, which has its own, or of any other nutrient.
void add_levels(Json& json, Check const& check) {
    bool const known = check.label.has_value();
    Json const relative = known && check.need > 0 ? Json(100 * check.short_by / check.need) : Json(nullptr);
    if (check.nutrient == "protein") {
        json["protein_pct"] = or_null(check.label);
        json["need_pct"] = check.need;
        json["short_pct"] = relative;
        json["short_points"] = known ? Json(check.short_by) : Json(nullptr);
        return;
    }
    json["label"] = or_null(check.label);
    json["label_maximum"] = or_null(check.label_maximum);
    json["need"] = check.need > 0 ? Json(check.need) : Json(nullptr);
    json["unit"] = unit_of(check.nutrient);
    json["short_pct"] = relative;
}

}  // namespace

std::string name(Verdict verdict) {
    switch (verdict) {
        case Verdict::meets:
            return "meets";
        case Verdict::short_of:
            return "short";
        case Verdict::over:
            return "over";
        case Verdict::unstated:
            break;
    }
    return "unstated";
}

Json unit_of(std::string const& nutrient) {
    auto const* known = domain::find_nutrient(nutrient);
    if (known == nullptr) return nullptr;
    switch (known->unit) {
        case domain::NutrientUnit::percent:
            return "%";
        case domain::NutrientUnit::milligrams_per_kilogram:
            return "mg/kg";
        case domain::NutrientUnit::units_per_kilogram:
            return "IU/kg";
        case domain::NutrientUnit::kilocalories_per_kilogram:
            return "kcal/kg";
    }
    return nullptr;
}

Json to_json(domain::Source const& source) {
    return {{"source", source.text}, {"standing", domain::name(source.standing)}};
}

Json mix_json(engine::Mix const& mix) {
    Json json{{"supplement", mix.supplement},
              {"rate", mix.words},
              {"from_d", in_days(mix.from)},
              {"to_d", in_days(mix.to)},
              {"per_l_g", or_null(mix.strength, quantities::in_grams_per_litre)},
              {"sodium_mg_per_l", or_null(mix.sodium, quantities::in_milligrams_per_litre)},
              {"sodium", mix.sum ? sodium_json(*mix.sum) : Json(nullptr)},
              {"batches", Json::array()}};
    for (engine::Batch const& batch : mix.batches) json["batches"].push_back(batch_json(batch));
    add_dose(json, mix.total);
    return json;
}

Json check_json(Check const& check) {
    Json json{{"feed", check.feed},
              {"phase", check.phase},
              {"from_d", in_days(check.from)},
              {"to_d", in_days(check.to)},
              {"nutrient", check.nutrient}};
    add_levels(json, check);
    json["verdict"] = name(check.verdict);
    if (check.nutrient == "protein") {
        json["given_g_per_bird_d"] = or_null(check.given_per_bird, in_grams);
        json["need_g_per_bird_d"] = or_null(check.need_per_bird, in_grams);
    }
    if (check.nutrient == "sodium") {
        json["drunk_sodium_mg_per_l"] = or_null(check.drunk_sodium, quantities::in_milligrams_per_litre);
        json["water_ml_per_g"] = or_null(check.thirst, quantities::in_litres_per_kilogram);
        json["diet_pct"] = or_null(check.diet);
        json["diet_at_most_pct"] = check.ceiling ? Json(check.ceiling->at_most) : Json(nullptr);
    }
    json.update(to_json(check.source));
    return json;
}

Json farm_name(domain::Farm const& farm) { return farm.name.empty() ? Json(nullptr) : Json(farm.name); }

Json measures_name(quantities::Measures measures) {
    if (measures == quantities::Measures::us) return "us";
    return measures == quantities::Measures::metric ? "metric" : "uk";
}

Json date_json(engine::Moment date, domain::Farm const& farm) {
    engine::Moment const midnight(date.date());
    bool const whole_day = date == midnight || date == domain::at_first_chore(midnight, farm);
    return whole_day ? date.iso_date() : date.iso();
}

Json notes(std::vector<engine::Assumption> const& assumptions, quantities::Measures measures) {
    Json all = Json::array();
    for (AssumptionLine const& one : assumption_lines(assumptions, measures)) {
        Json json{{"id", one.id}, {"text", one.text}};
        json.update(to_json(one.source));
        all.push_back(json);
    }
    return all;
}

Json notes(std::vector<engine::Caution> const& cautions, quantities::Measures measures) {
    Json all = Json::array();
    for (CautionLine const& one : caution_lines(cautions, measures)) {
        Json json{{"id", one.id}, {"text", one.text}, {"source", one.source}};
        if (!one.hatches.empty()) json["hatches"] = one.hatches;
        all.push_back(json);
    }
    return all;
}

std::string printed(Json const& json) { return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n"; }

}  // namespace cropful::reports
