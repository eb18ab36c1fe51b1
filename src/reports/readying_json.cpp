#include "reports/json_parts.hpp"

namespace cropful::reports {

using quantities::in_litres;
using quantities::in_millilitres;
using quantities::in_money;

Json bedding_json(engine::Readying const& readying) {
    Json all = Json::array();
    for (engine::BeddingPurchase const& one : readying.bedding) {
        all.push_back(Json{{"brooder", one.brooder},
                           {"times", one.times},
                           {"each_l", in_litres(one.each)},
                           {"bedding_l", in_litres(one.total)},
                           {"bag_l", in_litres(one.bag)},
                           {"bags", one.bags},
                           {"cost", or_null(one.cost, in_money)},
                           {"first_needed", one.first.iso()}});
    }
    return all;
}

Json disinfectant_json(engine::Readying const& readying) {
    Json all = Json::array();
    for (engine::DisinfectantPurchase const& one : readying.disinfectants) {
        Json json{{"disinfectant", one.key},
                  {"title", one.title},
                  {"water_parts", one.water_parts},
                  {"cleanings", Json::array()},
                  {"product_ml", in_millilitres(one.product)},
                  {"packs", or_null(one.packs)},
                  {"cost", or_null(one.cost, in_money)},
                  {"first_needed", one.first.iso()}};
        for (engine::SortCleaning const& cleaning : one.cleanings) {
            json["cleanings"].push_back(Json{{"brooder", cleaning.brooder},
                                             {"times", cleaning.times},
                                             {"solution_l", in_litres(cleaning.solution)},
                                             {"product_ml", in_millilitres(cleaning.product)},
                                             {"water_l", in_litres(cleaning.water)}});
        }
        all.push_back(std::move(json));
    }
    return all;
}

}  // namespace cropful::reports
