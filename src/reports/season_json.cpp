#include "cropful/reports/season_json.hpp"

#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using engine::Overview;
using quantities::in_birds;
using quantities::in_kilograms;
using quantities::in_litres;
using quantities::in_money;

Json stays_json(Overview const& season) {
    Json all = Json::array();
    for (engine::Stay const& stay : season.placement.stays) {
        all.push_back(Json{{"brooder", stay.brooder},
                           {"number", stay.number},
                           {"hatch", stay.hatch},
                           {"from", stay.from.iso()},
                           {"to", stay.to.iso()},
                           {"free_from", stay.free_from.iso()},
                           {"joins", stay.joins},
                           {"birds", in_birds(stay.birds)}});
    }
    return all;
}

Json unplaced_json(Overview const& season) {
    auto const day = [&](engine::Moment date) { return date_json(date, season.plan.farm); };
    Json all = Json::array();
    for (engine::Unplaced const& one : season.placement.unplaced) {
        all.push_back(Json{{"hatch", one.hatch},
                           {"brooder", one.brooder},
                           {"birds", in_birds(one.birds)},
                           {"needs", one.needs},
                           {"gets", one.gets},
                           {"from", one.from.iso()},
                           {"to", one.to.iso()},
                           {"fits_before", or_null(one.fits_before, day)},
                           {"fits_after", or_null(one.fits_after, day)}});
    }
    return all;
}

Json days_json(Overview const& season) {
    Json all = Json::array();
    for (engine::Day const& day : season.days) {
        Json json{{"date", day.at.iso_date()},
                  {"birds", in_birds(day.birds)},
                  {"water_l", in_litres(day.water)},
                  {"feeds", Json::array()}};
        for (engine::Eaten const& one : day.feeds) {
            json["feeds"].push_back(Json{{"feed", one.feed}, {"feed_kg", in_kilograms(one.amount)}});
        }
        all.push_back(std::move(json));
    }
    return all;
}

Json costs_json(Overview const& season) {
    Json all = Json::array();
    for (engine::HatchCost const& one : season.costs) {
        all.push_back(Json{{"name", one.hatch},
                           {"kind", one.kind},
                           {"date", date_json(one.date, season.plan.farm)},
                           {"chicks", in_birds(one.chicks)},
                           {"raised", in_birds(one.raised)},
                           {"feed_kg", in_kilograms(one.feed)},
                           {"cost", or_null(one.cost, in_money)},
                           {"cost_per_bird", or_null(one.per_bird, in_money)},
                           {"cost_per_dozen", or_null(one.per_dozen, in_money)},
                           {"week_more_cost", or_null(one.week_more, in_money)}});
    }
    return all;
}

}  // namespace

std::string season_json(Overview const& season) {
    engine::Plan const& plan = season.plan;
    return printed({{"farm", farm_name(plan.farm)},
                    {"from", season.from.iso()},
                    {"to", season.to.iso()},
                    {"units", measures_name(plan.farm.measures)},
                    {"currency", plan.farm.currency},
                    {"brooders", stays_json(season)},
                    {"unplaced", unplaced_json(season)},
                    {"no_brooder", season.placement.unnamed},
                    {"days", days_json(season)},
                    {"bedding", bedding_json(season.readying)},
                    {"disinfectant", disinfectant_json(season.readying)},
                    {"hatches", costs_json(season)},
                    {"learned", learned_json(plan.learned)},
                    {"alarms", intervals_json(plan.alarms)},
                    {"assumptions", notes(season.assumptions, plan.farm.measures)},
                    {"cautions", notes(plan.cautions, plan.farm.measures)}});
}

}  // namespace cropful::reports
