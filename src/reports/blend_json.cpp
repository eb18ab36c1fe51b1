#include "cropful/domain/nutrient.hpp"
#include "cropful/reports/blend_page.hpp"
#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using namespace quantities;
using blends::BlendAnswer;
using blends::BlendFinding;
using blends::BlendLimit;
using blends::BlendStatus;
using engine::Verdict;

std::string status_name(BlendStatus status) {
    if (status == BlendStatus::given) return "given";
    return status == BlendStatus::impossible ? "impossible" : "least cost";
}

/// A level in the nutrient's unit; of an ingredient its share in per cent.
double shown(BlendLimit const& limit, double level) {
    return limit.of == BlendLimit::Of::ingredient ? 100 * level : level;
}

Json limit_json(BlendLimit const& limit) {
    bool const nutrient = limit.of == BlendLimit::Of::nutrient;
    Json json{{nutrient ? "nutrient" : "ingredient", limit.key},
              {"limit", limit.floor ? "floor" : "ceiling"},
              {"level", shown(limit, limit.level)},
              {"unit", !limit.per.empty() ? Json("times")
                       : nutrient         ? unit_of(limit.key)
                                          : Json("%")},
              {"per", limit.per.empty() ? Json(nullptr) : Json(limit.per)},
              {"borrowed", limit.borrowed}};
    json.update(to_json(limit.source));
    return json;
}

Json blend_limits_json(std::vector<BlendLimit> const& limits) {
    Json all = Json::array();
    for (BlendLimit const& one : limits) all.push_back(limit_json(one));
    return all;
}

Json clashes_json(std::vector<blends::BlendClash> const& clashes) {
    Json all = Json::array();
    for (auto const& one : clashes) {
        Json json = limit_json(one.limit);
        json["reached"] = shown(one.limit, one.reached);
        json["within_reach"] = one.within_reach;
        json["against"] = blend_limits_json(one.against);
        all.push_back(json);
    }
    return all;
}

Json finding_json(BlendFinding const& one) {
    Json json{{"nutrient", one.nutrient}, {"unit", unit_of(one.nutrient)}};
    bool const stated = one.verdict != Verdict::unstated;
    json["level"] = stated ? Json(one.level) : Json(nullptr);
    json["most"] = stated && one.only_least.empty() ? Json(one.most) : Json(nullptr);
    json["floor"] = or_null(one.floor);
    json["ceiling"] = or_null(one.ceiling);
    bool const asked = one.floor || one.ceiling;
    json["verdict"] = !asked ? Json(nullptr) : one.shown ? Json(reports::name(one.verdict)) : Json("not shown");
    json["off_by"] = one.off_by;
    json["by_rounding"] = one.by_rounding;
    json["silent"] = one.silent;
    json["silent_pct"] = 100 * one.silent_share;
    json["floor_standing"] = one.floor ? Json(domain::name(one.floor_source.standing)) : Json(nullptr);
    json["floor_borrowed"] = one.floor_borrowed;
    json["ceiling_standing"] = one.ceiling ? Json(domain::name(one.ceiling_source.standing)) : Json(nullptr);
    return json;
}

Json part_json(blends::BlendPart const& part, Mass batch) {
    return {{"ingredient", part.key},
            {"title", part.title},
            {"amount_kg", in_kilograms(part.amount)},
            {"share_pct", 100 * ratio(part.amount / batch)},
            {"exact_pct", 100 * part.share},
            {"price_per_kg", or_null(part.price, in_money_per_kilogram)},
            {"enters_below_per_kg", or_null(part.enters_below, in_money_per_kilogram)}};
}

Json price_json(blends::ShadowPrice const& price) {
    Json json = limit_json(price.limit);
    json["to"] = shown(price.limit, price.to);
    json["change_per_kg"] = or_null(price.change, in_money_per_kilogram);
    json["dual_per_kg"] = price.limit.of == BlendLimit::Of::ingredient ? price.dual / 100 : price.dual;
    return json;
}

Json blend_json(BlendAnswer const& answer, quantities::Measures measures) {
    Json json{{"name", answer.blend.name},
              {"kind", or_null(answer.blend.kind)},
              {"phase", answer.phase.empty() ? Json(nullptr) : Json(answer.phase)},
              {"by_energy", answer.need_scale == engine::NeedScale::by_energy},
              {"ceilings_for", answer.laying ? "birds in lay" : "birds that do not lay"},
              {"status", status_name(answer.status)},
              {"not_kept", clashes_json(answer.not_kept)},
              {"batch_kg", in_kilograms(answer.batch)},
              {"scale_kg", in_kilograms(answer.scale)},
              {"cost", or_null(answer.batch_cost, in_money)},
              {"optimum_per_kg", or_null(answer.cost, in_money_per_kilogram)},
              {"mix_unique", answer.mix_unique},
              {"duals_unique", answer.duals_unique},
              {"shortfall", answer.shortfall},
              {"clashes", clashes_json(answer.clashes)},
              {"ingredients", Json::array()},
              {"analysis", Json::array()},
              {"shares_missed", clashes_json(answer.shares_missed)},
              {"shadow_prices", Json::array()}};
    for (auto const& one : answer.parts) json["ingredients"].push_back(part_json(one, answer.batch));
    for (auto const& one : answer.findings) json["analysis"].push_back(finding_json(one));
    for (auto const& one : answer.prices) json["shadow_prices"].push_back(price_json(one));
    json["assumptions"] = notes(answer.assumptions, measures);
    json["cautions"] = notes(answer.cautions, measures);
    return json;
}

}  // namespace

std::string blends_json(std::vector<BlendAnswer> const& answers, domain::Farm const& farm) {
    Json blends = Json::array();
    for (BlendAnswer const& answer : answers) blends.push_back(blend_json(answer, farm.measures));
    return printed({{"farm", farm.name}, {"currency", farm.currency}, {"blends", blends}});
}

}  // namespace cropful::reports
