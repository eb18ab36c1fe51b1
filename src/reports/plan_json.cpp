#include "cropful/reports/plan_json.hpp"

#include "cropful/reports/plan_parts.hpp"

#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using engine::HatchPlan;
using engine::Plan;
using quantities::in_days;
using quantities::in_kilograms;
using quantities::in_litres;
using quantities::in_money;

void add_window(Json& json, engine::Window const& window) {
    if (window.from) json["from"] = window.from->iso();
    if (window.until) json["until"] = window.until->iso();
}

Json hatch_head(HatchPlan const& hatch, domain::Farm const& farm) {
    return {{"name", hatch.hatch.name},
            {"kind", hatch.hatch.kind},
            {"date", date_json(hatch.hatch.date, farm)},
            {"chicks", quantities::in_birds(hatch.chicks)}};
}

Json feeds_json(HatchPlan const& hatch, domain::Farm const& farm) {
    Json all = Json::array();
    for (engine::FeedNeed const& feed : hatch.feeds) {
        auto const& bag = farm.feeds.at(feed.feed).bag;
        all.push_back(Json{{"feed", feed.feed},
                           {"from_d", in_days(feed.from)},
                           {"to_d", in_days(feed.to)},
                           {"feed_kg", in_kilograms(feed.amount)},
                           {"p05", in_kilograms(feed.band.p05)},
                           {"p50", in_kilograms(feed.band.p50)},
                           {"p95", in_kilograms(feed.band.p95)},
                           {"bags", bag ? Json(feed.bags) : Json(nullptr)},
                           {"bag_kg", or_null(bag, in_kilograms)},
                           {"cost", or_null(feed.cost, in_money)}});
    }
    return all;
}

Json checks_json(HatchPlan const& hatch) {
    Json all = Json::array();
    for (engine::Check const& check : hatch.checks) all.push_back(check_json(check));
    return all;
}

Json weeks_json(HatchPlan const& hatch) {
    Json all = Json::array();
    for (engine::Week const& week : hatch.weeks) {
        all.push_back(Json{{"week", week.number},
                           {"from_d", in_days(week.from)},
                           {"birds", quantities::in_birds(week.birds)},
                           {"feed_kg_per_d", in_kilograms(week.feed)},
                           {"water_l_per_d", in_litres(week.water)}});
    }
    return all;
}

Json mix_or_null(HatchPlan const& hatch) { return hatch.mix() ? mix_json(*hatch.mix()) : Json(nullptr); }

Json mixes_json(HatchPlan const& hatch) {
    Json all = Json::array();
    for (engine::Mix const& mix : hatch.mixes) all.push_back(mix_json(mix));
    return all;
}

/// "bag", "lot" or "weight"; null where nothing says it.
Json sold_by(domain::Feed const& feed) {
    if (feed.bag) return bag_noun(feed);
    return feed.by_weight ? Json("weight") : Json(nullptr);
}

void add_purchases(Json& json, Plan const& plan) {
    json["buy"] = Json::array();
    auto feed_kg = quantities::kilograms(0);
    for (engine::Purchase const& feed : plan.feeds) {
        feed_kg += feed.need;
        json["buy"].push_back(
            Json{{"feed", feed.key},
                 {"title", feed.title},
                 {"feed_kg", in_kilograms(feed.need)},
                 {"p05", in_kilograms(feed.band.p05)},
                 {"p50", in_kilograms(feed.band.p50)},
                 {"p95", in_kilograms(feed.band.p95)},
                 {"on_hand_kg", in_kilograms(feed.on_hand)},
                 {"spare_kg", in_kilograms(feed.spare)},
                 {"put_in_kg", in_kilograms(feed.put_in)},
                 {"stays_behind_kg", in_kilograms(feed.stays_behind)},
                 {"stock_kg", in_kilograms(feed.on_hand)},
                 {"in_hoppers_kg", in_kilograms(feed.in_hoppers)},
                 {"bought_kg",
                  feed.bag ? Json(in_kilograms(*feed.bag * static_cast<double>(feed.safe_bags.p95))) : Json(nullptr)},
                 {"bags", feed.bag ? Json(feed.bags) : Json(nullptr)},
                 {"bags_p05", feed.bag ? Json(feed.safe_bags.p05) : Json(nullptr)},
                 {"bags_p50", feed.bag ? Json(feed.safe_bags.p50) : Json(nullptr)},
                 {"bags_p95", feed.bag ? Json(feed.safe_bags.p95) : Json(nullptr)},
                 {"bag_kg", or_null(feed.bag, in_kilograms)},
                 {"sold_by", sold_by(plan.farm.feeds.at(feed.key))},
                 {"cost", or_null(feed.cost, in_money)},
                 {"cost_p95", or_null(feed.safe_cost, in_money)},
                 {"first_needed", feed.first_needed.iso()},
                 {"last_needed", feed.last_needed.iso()}});
    }
    json["supplements"] = Json::array();
    for (engine::SupplementPurchase const& bought : plan.supplements) {
        json["supplements"].push_back(Json{{"supplement", bought.key},
                                           {"title", bought.title},
                                           {"product_g", or_null(bought.by_weight, quantities::in_grams)},
                                           {"product_ml", or_null(bought.by_volume, quantities::in_millilitres)},
                                           {"packs", or_null(bought.packs)},
                                           {"cost", or_null(bought.cost, in_money)},
                                           {"product_g_p95", or_null(bought.by_weight, quantities::in_grams)},
                                           {"product_ml_p95", or_null(bought.by_volume, quantities::in_millilitres)},
                                           {"packs_p95", or_null(bought.packs)},
                                           {"cost_p95", or_null(bought.cost, in_money)},
                                           {"first_needed", bought.first_needed.iso()}});
    }
    json["bedding"] = bedding_json(plan.readying);
    json["disinfectant"] = disinfectant_json(plan.readying);
    json["total"] = {{"cost", in_money(plan.cost)},
                     {"cost_is_whole", plan.cost_is_whole},
                     {"currency", plan.farm.currency},
                     {"cost_p95", in_money(plan.safe_cost)},
                     {"bags", plan.bags},
                     {"bags_p95", plan.safe_bags},
                     {"feed_kg", in_kilograms(feed_kg)}};
}

/// Every answer: the farm, its hatches, what `add` adds to each and `finish` to the whole, and the notes.
template <class Add, class Finish>
std::string answer(Plan const& plan, Json json, Add add, Finish finish) {
    json["units"] = measures_name(plan.farm.measures);
    json["hatches"] = Json::array();
    for (HatchPlan const& hatch : plan.hatches) {
        Json part = hatch_head(hatch, plan.farm);
        add(part, hatch);
        json["hatches"].push_back(std::move(part));
    }
    finish(json);
    json["learned"] = learned_json(plan.learned);
    json["alarms"] = intervals_json(plan.alarms);
    json["assumptions"] = notes(plan.assumptions, plan.farm.measures);
    json["cautions"] = notes(plan.cautions, plan.farm.measures);
    return printed(json);
}

template <class Add>
std::string answer(Plan const& plan, Add add) {
    return answer(plan, {{"farm", farm_name(plan.farm)}}, add, [](Json&) {});
}

}  // namespace

std::string plan_json(Plan const& plan, engine::Window const& window) {
    Json json{{"farm", farm_name(plan.farm)}};
    add_window(json, window);
    auto const add = [&](Json& part, HatchPlan const& hatch) {
        part["feeds"] = feeds_json(hatch, plan.farm);
        part["hoppers"] = hoppers_json(hatch, Fills::all);
        part["drinkers"] = drinkers_json(hatch, Fills::all);
        part["mix"] = mix_or_null(hatch);
        part["mixes"] = mixes_json(hatch);
        part["stages"] = stages_json(hatch);
        part["check"] = checks_json(hatch);
        part["weeks"] = weeks_json(hatch);
    };
    return answer(plan, std::move(json), add, [&](Json& whole) {
        whole["stocks"] = stocks_json(plan);
        add_purchases(whole, plan);
    });
}

std::string buy_json(Plan const& plan, engine::Window const& window) {
    Json json{{"farm", farm_name(plan.farm)}};
    add_window(json, window);
    auto const add = [&](Json& part, HatchPlan const& hatch) { part["feeds"] = feeds_json(hatch, plan.farm); };
    return answer(plan, std::move(json), add, [&](Json& whole) { add_purchases(whole, plan); });
}

std::string last_json(Plan const& plan, std::optional<engine::Moment> at) {
    Json json{{"farm", farm_name(plan.farm)}, {"at", at ? Json(at->iso()) : Json(nullptr)}};
    auto const add = [](Json& part, HatchPlan const& hatch) {
        part["hoppers"] = hoppers_json(hatch, Fills::first);
        part["drinkers"] = drinkers_json(hatch, Fills::first);
    };
    return answer(plan, std::move(json), add, [](Json&) {});
}

std::string mix_json_text(Plan const& plan) {
    auto const add = [](Json& part, HatchPlan const& hatch) {
        part["mix"] = mix_or_null(hatch);
        part["mixes"] = mixes_json(hatch);
    };
    return answer(plan, {{"farm", farm_name(plan.farm)}}, add,
                  [&](Json& whole) { whole["stocks"] = stocks_json(plan); });
}

std::string plain_mix_json(engine::Mix const& mix, std::vector<engine::Caution> const& cautions,
                           quantities::Measures measures) {
    return printed({{"mix", mix_json(mix)}, {"assumptions", Json::array()}, {"cautions", notes(cautions, measures)}});
}

std::string check_json_text(Plan const& plan) {
    auto const add = [](Json& part, HatchPlan const& hatch) { part["check"] = checks_json(hatch); };
    return answer(plan, {{"farm", farm_name(plan.farm)}}, add, [&](Json& whole) {
        whole["water"] = water_json(plan.water);
        whole["sodium"] = plan.sodium.empty() ? Json(nullptr) : sodium_json(plan.sodium.front());
    });
}

}  // namespace cropful::reports
