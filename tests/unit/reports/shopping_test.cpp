// Every list of things to buy names the same things: feed, supplement, bedding and disinfectant.
#include "reports/shopping.hpp"

#include <catch2/catch.hpp>

#include "cropful/engine/agenda.hpp"
#include "cropful/engine/buying.hpp"
#include "cropful/reports/buy_page.hpp"
#include "cropful/reports/plan_csv.hpp"
#include "cropful/reports/setting.hpp"
#include "cropful/reports/trips_page.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using Catch::Matchers::Contains;

namespace {

// 2 tanks of 2 m2 under 5 cm of bedding: 100 L each; 5 L of solution at 1 % take 0.625 L of a product of 8 %.
std::string const farm = R"([farm]
name = "Lists"
units = "metric"
[feed.starter]
protein = "26 %"
bag = "20 kg"
price = 20.00
[drinker.bell]
volume = "4 L"
[supplement.tonic]
title = "Chick tonic"
rate = "2 mL per L"
days = 5
pack = "500 g"
[disinfectant.bleach]
title = "Bleach"
strength = "8 %"
use_at = "1 %"
[brooder.tank]
holds = 40
count = 2
until = "3 wk"
floor = { length = "2 m", width = "1 m" }
bedding = { depth = "5 cm", bag = "120 L" }
disinfectant = "bleach"
solution = "5 L"
[[hatch]]
name = "Quail"
kind = "coturnix"
date = 2027-04-05
chicks = 80
feeding = [{ feed = "starter", from = "0 d" }]
until = "6 wk"
drinker = "bell"
brooder = "tank"
supplement = "tonic"
)";

std::vector<std::string> const sorts{"feed", "supplement", "bedding", "disinfectant"};

}  // namespace

TEST_CASE("the list has a row for everything to buy, with the day it is needed", "[reports]") {
    auto const plan = sample::plan_of(farm);
    auto const rows = engine::shopping_list(plan);
    REQUIRE(rows.size() == 4);
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(rows[i].sort == engine::ShoppingItem::Sort(i));
        CHECK(rows[i].first.iso_date() == (i < 2 ? "2027-04-05" : rows[2].first.iso_date()));
        CHECK_FALSE(rows[i].none);
    }
    CHECK(rows[1].title == "Chick tonic");
    auto const count = [&](std::size_t i) { return reports::count_words(rows[i], plan.farm); };
    CHECK(count(2) == "2 bags");  // 200 L
    CHECK(count(3) == "1.25 L");  // no pack size stated
    CHECK_THAT(reports::what_words(rows[1], plan.farm),
               Contains("state its spoon to count packs"));  // 2 mL per L weigh nobody knows what
    CHECK_THAT(count(1), Contains("mL"));
}

TEST_CASE("text, table and trips name them all", "[reports]") {
    auto const plan = sample::plan_of(farm);
    auto const csv = reports::buy_csv(plan), text = reports::set(reports::purchases_part(plan));
    for (std::string const& sort : sorts) CHECK_THAT(csv, Contains(sort + ","));
    CHECK_THAT(csv, Contains("\r\nbedding,tank,bedding for tank,2,"));
    CHECK_THAT(csv, Contains("\r\ndisinfectant,bleach,Bleach,,"));
    for (char const* what : {"starter", "Chick tonic", "bedding for tank", "Bleach"}) {
        CHECK_THAT(text, Contains(what));
    }
    // each the day before it is needed; feed is not bought by trips, for the farm states no store
    auto const fetched = engine::fetches(plan, plan.hatches.front().hatch.date + quantities::days(-30));
    REQUIRE(fetched.size() == 4);
    CHECK(fetched[2].title == "bedding for tank");
    CHECK(fetched[2].packs == 2);
    CHECK(fetched[3].title == "Bleach");

    auto const trips = reports::set(reports::trips_page(engine::plan_trips(plan), reports::Sources::left_out));
    CHECK_THAT(trips, Contains("of Chick tonic") || Contains("Chick tonic\n"));
    CHECK_THAT(trips, Contains("bedding for tank"));
    CHECK_THAT(trips, Contains("Bleach"));
}

// At 420 a tonne a lot of 10 kg costs 4.20.
TEST_CASE("loose feed is bought in lots, or by weight, and called so", "[reports]") {
    auto const sold = [](std::string const& words) {
        std::string const bag = "bag = \"20 kg\"\nprice = 20.00\n";
        auto text = farm;
        return sample::plan_of(text.replace(text.find(bag), bag.size(), words));
    };
    auto plan = sold("lot = \"10 kg\"\nprice = \"420 per tonne\"\n");
    int const lots = plan.feeds.at(0).safe_bags.p95;
    REQUIRE(lots > 1);
    auto rows = engine::shopping_list(plan);
    CHECK(reports::count_words(rows[0], plan.farm) == std::to_string(lots) + " lots");
    CHECK_THAT(quantities::in_money(rows[0].cost.value()), Catch::WithinRel(lots * 4.2, 1e-9));
    auto text = reports::set(reports::purchases_part(plan));
    CHECK_THAT(text, Contains(std::to_string(lots) + " lots of feed"));
    plan = sold("price = \"420 per tonne\"\n");
    rows = engine::shopping_list(plan);
    CHECK_THAT(reports::count_words(rows[0], plan.farm), Contains(" kg"));
    CHECK_THAT(quantities::in_money(rows[0].cost.value()),
               Catch::WithinRel(0.42 * quantities::in_kilograms(plan.feeds[0].short_by()), 1e-9));
    text = reports::set(reports::purchases_part(plan));
    CHECK_THAT(text, !Contains("no bag size stated") && !Contains("0 bags"));
}
