#include <algorithm>

#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using engine::Fill;
using quantities::in_days;
using quantities::in_kilograms;
using quantities::in_litres;
using quantities::Mass;
using quantities::Volume;

Json empty_at(engine::Moment at, std::optional<quantities::Duration> after) {
    return after ? Json((at + *after).iso()) : Json(nullptr);
}

/// The sooner of dry and due; empty where nothing but running dry is stated.
std::optional<quantities::Duration> due_after(Fill<Volume> const& fill) {
    if (fill.change_after && fill.empty_after) return std::min(*fill.change_after, *fill.empty_after);
    return fill.change_after;
}

template <class Amount, class In>
Json fill_in(Fill<Amount> const& fill, std::string const& unit, In in) {
    return {{"at", fill.at.iso()},
            {"age_d", in_days(fill.age)},
            {"birds", quantities::in_birds(fill.birds)},
            {"do_at", fill.do_at.iso()},
            {"content_" + unit, in(fill.content)},
            {"put_in_" + unit, in(fill.put_in)},
            {"share_of_full", fill.share_of_full},
            {"until", fill.until.iso()},
            {"would_do", fill.would_do > 0 ? Json(fill.would_do) : Json(nullptr)},
            {"used_" + unit, in(fill.used)},
            {"empty_after_d", or_null(fill.empty_after, in_days)},
            {"empty_at", empty_at(fill.at, fill.empty_after)},
            {"p05", or_null(fill.lasts.p05, in_days)},
            {"p50", or_null(fill.lasts.p50, in_days)},
            {"p95", or_null(fill.lasts.p95, in_days)}};
}

Json fill_json(Fill<Mass> const& fill) { return fill_in(fill, "kg", in_kilograms); }

Json fill_json(Fill<Volume> const& fill) {
    Json json = fill_in(fill, "l", in_litres);
    json["change_after_d"] = or_null(due_after(fill), in_days);
    return json;
}

template <class Value>
Value const* pointer(std::optional<Value> const& value) {
    return value ? &*value : nullptr;
}

/// Null without vessels.
template <class Amount>
Json all_or_first(engine::Vessels<Amount> const* vessels, char const* what, Fills which) {
    if (!vessels) return nullptr;
    Json json{{what, vessels->key}, {"count", vessels->count}, {"fills", Json::array()}};  // none of a line
    for (auto const& fill : vessels->fills) {
        json["fills"].push_back(fill_json(fill));
        if (which == Fills::first) break;
    }
    return json;
}

}  // namespace

Json stages_json(engine::HatchPlan const& hatch) {
    Json all = Json::array();
    for (engine::StagePlan const& stage : hatch.stages) {
        all.push_back({{"from_d", in_days(stage.from)},
                       {"to_d", in_days(stage.to)},
                       {"house", or_null(stage.house)},
                       {"houses", stage.houses},
                       {"numbers", stage.numbers},
                       {"hoppers", all_or_first(pointer(stage.hoppers), "hopper", Fills::all)},
                       {"drinkers", all_or_first(pointer(stage.drinkers), "drinker", Fills::all)}});
    }
    return all;
}

Json hoppers_json(engine::HatchPlan const& hatch, Fills which) {
    return all_or_first(hatch.hoppers(), "hopper", which);
}

Json drinkers_json(engine::HatchPlan const& hatch, Fills which) {
    return all_or_first(hatch.drinkers(), "drinker", which);
}

}  // namespace cropful::reports
