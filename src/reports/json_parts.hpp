#pragma once

#include <optional>
#include <string>

#include <nlohmann/json.hpp>

#include "cropful/domain/standing.hpp"
#include "cropful/engine/plan.hpp"

/// Parts of the JSON answers: SI numbers at full precision with the unit in the key, null for what is not known.
namespace cropful::reports {

using Json = nlohmann::ordered_json;

template <class Value>
Json or_null(std::optional<Value> const& value) {
    return value ? Json(*value) : Json(nullptr);
}

/// The number of an amount in the unit `in`, or null.
template <class Amount, class In>
Json or_null(std::optional<Amount> const& amount, In in) {
    return amount ? Json(in(*amount)) : Json(nullptr);
}

std::string name(engine::Verdict verdict);   // "meets", "short", "over", "unstated"
Json to_json(domain::Source const& source);  // {source, standing}
Json unit_of(std::string const& nutrient);   // "%", "mg/kg", ...; null for an unknown one
enum class Fills { all, first };
Json stages_json(engine::HatchPlan const& hatch);
Json hoppers_json(engine::HatchPlan const& hatch, Fills which);   // null without
Json drinkers_json(engine::HatchPlan const& hatch, Fills which);  // null without
Json learned_json(std::vector<engine::Learned> const& learned);
Json intervals_json(std::vector<engine::Interval> const& intervals);
Json mix_json(engine::Mix const& mix);
Json stocks_json(engine::Plan const& plan);
Json check_json(engine::Check const& check);
Json water_json(std::vector<engine::WaterFinding> const& findings);
Json sodium_json(engine::SodiumSum const& sum);
Json water_rows_json(rations::WaterTable const& table);
Json farm_name(domain::Farm const& farm);                       // null without one
Json measures_name(quantities::Measures measures);              // "us", "metric", "uk"
Json date_json(engine::Moment date, domain::Farm const& farm);  // the day alone at its first chore
Json bedding_json(engine::Readying const& readying);
Json disinfectant_json(engine::Readying const& readying);
Json notes(std::vector<engine::Assumption> const& assumptions, quantities::Measures measures);
Json notes(std::vector<engine::Caution> const& cautions, quantities::Measures measures);
std::string printed(Json const& json);  // indented, ends with a line feed

}  // namespace cropful::reports
