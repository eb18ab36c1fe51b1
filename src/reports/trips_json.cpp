#include "cropful/reports/trips_page.hpp"
#include "reports/json_parts.hpp"

namespace cropful::reports {

namespace {

using engine::TripPlan;
using quantities::in_kilograms;
using quantities::in_money;

Json trip_json(TripPlan const& trips, std::size_t number) {
    engine::Trip const& trip = trips.shopping.trips[number];
    Json feeds = Json::array();
    auto cost = trip.cost;
    for (engine::FeedBought const& feed : trip.feeds) {
        Json bags = Json::array();
        for (engine::BagsBought const& some : feed.bags) {
            bags.push_back({{"bag_kg", in_kilograms(some.size)}, {"bags", some.count}, {"cost", in_money(some.cost)}});
        }
        feeds.push_back({{"feed", trips.feeds[feed.feed]}, {"bags", bags}, {"feed_kg", in_kilograms(feed.amount)}});
        cost += feed.cost;
    }
    return {{"date", trips.date(trip.day).iso_date()}, {"cost", in_money(cost)}, {"feeds", feeds}};
}

Json waste_json(TripPlan const& trips) {
    Json all = Json::array();
    for (engine::Waste const& waste : trips.shopping.waste) {
        all.push_back({{"feed", trips.feeds[waste.feed]},
                       {"date", trips.date(waste.day).iso_date()},
                       {"feed_kg", in_kilograms(waste.amount)},
                       {"cost", in_money(waste.cost)}});
    }
    return all;
}

Json packs_json(TripPlan const& trips) {
    Json all = Json::array();
    for (engine::PacksBought const& packs : trips.packs) {
        Json const date =
            packs.trip ? Json(trips.date(trips.shopping.trips[*packs.trip].day).iso_date()) : Json(nullptr);
        all.push_back({{"supplement", packs.supplement},
                       {"packs", or_null(packs.packs)},
                       {"cost", or_null(packs.cost, in_money)},
                       {"needed_by", packs.by.iso()},
                       {"date", date}});
    }
    return all;
}

/// What is eaten by days, without what is to spare, and what is left over.
Json trip_needs_json(TripPlan const& trips) {
    Json all = Json::array();
    for (std::size_t i = 0; i < trips.feeds.size(); ++i) {
        Json days = Json::array();
        auto spare = trips.spare[i];
        int day = 0;
        for (auto const& need : trips.buying.feeds[i].needs) {
            auto const eaten = need > quantities::kilograms(0) ? need - spare : need;
            if (need > quantities::kilograms(0)) spare = quantities::kilograms(0);
            days.push_back({{"date", trips.date(day).iso_date()}, {"feed_kg", in_kilograms(eaten)}});
            ++day;
        }
        all.push_back({{"feed", trips.feeds[i]},
                       {"days", days},
                       {"spare_kg", in_kilograms(trips.spare[i])},
                       {"left_kg", in_kilograms(trips.shopping.left[i])}});
    }
    return all;
}

}  // namespace

std::string trips_json(TripPlan const& trips) {
    auto const& shopping = trips.shopping;
    Json json{{"farm", trips.plan.farm.name.empty() ? Json(nullptr) : Json(trips.plan.farm.name)},
              {"from", trips.first.iso_date()},
              {"to", trips.date(static_cast<int>(trips.buying.trips.size())).iso_date()},
              {"trips", Json::array()}};
    for (std::size_t i = 0; i < shopping.trips.size(); ++i) json["trips"].push_back(trip_json(trips, i));
    json["supplements"] = packs_json(trips);
    json["waste"] = waste_json(trips);
    json["needs"] = trip_needs_json(trips);
    json["cost"] = in_money(shopping.cost());
    json["trip_cost"] = in_money(shopping.trip_cost);
    json["bag_cost"] = in_money(shopping.bag_cost);
    json["keeping_cost"] = in_money(shopping.keeping_cost);
    json["currency"] = trips.plan.farm.currency;
    json["proven"] = shopping.proven;
    json["against"] = Json::array();
    for (engine::OtherWay const& other : trips.against) {
        json["against"].push_back({{"policy", other.policy}, {"cost", in_money(other.cost)}, {"trips", other.trips}});
    }
    json["bedding"] = bedding_json(trips.plan.readying);
    json["disinfectant"] = disinfectant_json(trips.plan.readying);
    json["assumptions"] = notes(trips.plan.assumptions, trips.plan.farm.measures);
    json["cautions"] = notes(trips.plan.cautions, trips.plan.farm.measures);
    return printed(json);
}

}  // namespace cropful::reports
