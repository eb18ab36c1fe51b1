// Blends worked by hand.
#include "cropful/blends/blend.hpp"

#include <catch2/catch.hpp>

#include "blends.hpp"
#include "cropful/rations/pantry.hpp"

using namespace cropful;
using namespace cropful::blends;
using namespace cropful::rations;
using namespace cropful::quantities;
using Catch::WithinAbs;
using sample::ingredient;
using sample::wish;

namespace {

std::vector<Ingredient> const grain_and_meal{ingredient("grain", 0.2, {{"protein", 8}}),
                                             ingredient("meal", 0.6, {{"protein", 44}})};

BlendFinding finding(BlendAnswer const& answer, std::string const& nutrient) {
    for (auto const& one : answer.findings) {
        if (one.nutrient == nutrient) return one;
    }
    FAIL("nothing said of " << nutrient);
    return {};
}

/// 20 % of protein in a feed of 2800 kcal/kg.
BlendNeeds young_birds() {
    BlendNeeds needs;
    needs.kind_title = "test birds";
    needs.phase = {.name = "young",
                   .laying = false,
                   .from = days(0),
                   .to = {},
                   .energy = kilocalories_per_kilogram(2800),
                   .needs = {{"protein", 20, false}}};
    return needs;
}

}  // namespace

TEST_CASE("20 % of grain 8 % and meal 44 %: two thirds and a third, and what a point costs", "[blend]") {
    // 24 : 12 parts; a third of 0.6 and two thirds of 0.2 are 0.3333 a kg; a point moves 1/36 from grain to meal
    auto const it = blend(wish({{"protein", {20, {}}}}), grain_and_meal, {});
    CHECK(it.status == BlendStatus::least_cost);
    CHECK_THAT(in_money_per_kilogram(*it.cost), WithinAbs(1.0 / 3, 1e-9));
    REQUIRE(it.prices.size() == 1);
    CHECK_THAT(it.prices[0].dual, WithinAbs(0.4 / 36, 1e-9));
    CHECK_THAT(in_money_per_kilogram(*it.prices[0].change), WithinAbs(0.4 / 36, 1e-9));
    CHECK(it.duals_unique);
}

TEST_CASE("steps of the scale are moved to keep a floor", "[blend]") {
    // 66.67 and 33.33 kg: 67 and 33 hold 19.88 %, 66 and 34 hold 20.24 %
    auto const it = blend(wish({{"protein", {20, {}}}}), grain_and_meal, {});
    CHECK_THAT(in_kilograms(it.parts[1].amount), WithinAbs(34, 1e-9));
    CHECK(finding(it, "protein").verdict == Verdict::meets);
}

TEST_CASE("a floor missed by rounding to the scale is said", "[blend]") {
    // between 20 and 20.1 % lies no whole number of kilograms: 19.88 % misses by less than 20.24 %
    auto const protein = finding(blend(wish({{"protein", {20, 20.1}}}), grain_and_meal, {}), "protein");
    CHECK(protein.verdict == Verdict::short_of);
    CHECK(protein.by_rounding);
    CHECK_THAT(protein.level, WithinAbs(19.88, 1e-9));
}

TEST_CASE("a given mix in another batch is weighed anew", "[blend]") {
    auto given = wish({});
    given.amounts = {{"grain", kilograms(2)}, {"meal", kilograms(1)}};
    auto const it = blend(given, grain_and_meal, {});
    CHECK_THAT(in_kilograms(it.parts[0].amount), WithinAbs(67, 1e-9));
    CHECK_THAT(in_kilograms(it.parts[1].amount), WithinAbs(33, 1e-9));
}

TEST_CASE("what is not stated is unknown, never zero", "[blend]") {
    auto feeds = grain_and_meal;
    feeds[1].holds["calcium"] = {0.3, 0.3, {}};
    auto it = blend(wish({{"protein", {20, {}}}, {"calcium", {0.1, 5.0}}, {"zinc", {50, {}}}}), feeds, {});
    CHECK(finding(it, "calcium").silent == std::vector<std::string>{"grain"});
    CHECK_THAT(finding(it, "calcium").silent_share, WithinAbs(0.66, 0.02));
    CHECK(finding(it, "zinc").verdict == Verdict::unstated);
}

TEST_CASE("an impossible request: the nearest mix and what clashes", "[blend]") {
    // 50 % is out of reach; all meal comes nearest, short by 6 of 50
    auto const it = blend(wish({{"protein", {50, {}}}}), grain_and_meal, {});
    REQUIRE(it.status == BlendStatus::impossible);
    CHECK_THAT(it.parts[1].share, WithinAbs(1, 1e-7));
    CHECK_THAT(it.shortfall, WithinAbs(6.0 / 50, 1e-9));
    REQUIRE(it.clashes.size() == 1);
    CHECK_THAT(it.clashes[0].reached, WithinAbs(44, 1e-6));
}

TEST_CASE("an ingredient's most stands against a floor, and is named", "[blend]") {
    auto feeds = grain_and_meal;
    feeds[1].at_most = 0.2;
    auto const it = blend(wish({{"protein", {20, {}}}}), feeds, {});
    REQUIRE(it.status == BlendStatus::impossible);
    CHECK_THAT(it.parts[1].share, WithinAbs(0.2, 1e-9));
    CHECK(it.clashes.at(0).within_reach);
    REQUIRE(it.clashes.at(0).against.size() == 1);
    CHECK(it.clashes[0].against[0].key == "meal");
}

TEST_CASE("of many limits only those that clash are named", "[blend]") {
    // 20 % of protein needs a third of meal, which brings 3.33 % of fibre; the lysine is out of the way
    auto feeds = grain_and_meal;
    feeds[0].holds["fibre"] = {1, 1, {}};
    feeds[1].holds["fibre"] = {8, 8, {}};
    for (auto& one : feeds) one.holds["lysine"] = {1, 1, {}};
    auto const it = blend(wish({{"protein", {20, {}}}, {"fibre", {{}, 3}}, {"lysine", {0.5, {}}}}), feeds, {});
    REQUIRE(it.status == BlendStatus::impossible);
    REQUIRE(it.clashes.size() == 1);
    REQUIRE(it.clashes[0].against.size() == 1);
    CHECK(it.clashes[0].against[0].key != it.clashes[0].limit.key);
    CHECK(it.clashes[0].against[0].key != "lysine");
}

TEST_CASE("a level that no ingredient has is out of reach, and clashes with nothing", "[blend]") {
    auto feeds = grain_and_meal;
    feeds[0].holds["fibre"] = {3, 3, {}};
    feeds[1].holds["fibre"] = {5, 5, {}};
    auto const it = blend(wish({{"fibre", {{}, 2}}, {"protein", {50, {}}}}), feeds, {});
    REQUIRE(it.clashes.size() == 2);
    for (auto const& clash : it.clashes) {
        CHECK_FALSE(clash.within_reach);
        CHECK(clash.against.empty());
    }
}

TEST_CASE("a limit missed for the sake of another that is out of reach clashes with nothing", "[blend]") {
    // no feed has 0.5 % of phosphorus; all pulse comes nearest in all: 0.2/0.5 and 400/2900 are less than 0.4/0.5 of
    // grain
    auto grain = ingredient("grain", 0.2, {{"npp", 0.1}, {"energy", 3000}});
    auto pulse = ingredient("pulse", 0.4, {{"npp", 0.3}, {"energy", 2500}});
    auto const it = blend(wish({{"npp", {0.5, {}}}, {"energy", {2900, {}}}}), {grain, pulse}, {});
    REQUIRE(it.clashes.size() == 2);
    for (auto const& clash : it.clashes) {
        CHECK(clash.within_reach == (clash.limit.key == "energy"));
        CHECK(clash.against.empty());
    }
}

TEST_CASE("an ingredient's limit that rounding to the scale misses by more than 5 % is said", "[blend]") {
    // 0.5 % of 100 kg on a scale of 1 kg is nothing or twice as much
    auto feeds = grain_and_meal;
    feeds.push_back(ingredient("premix", 1, {{"zinc", 5000}}));
    feeds[2].at_least = feeds[2].at_most.emplace(0.005);
    auto const it = blend(wish({{"protein", {20, {}}}}), feeds, {});
    REQUIRE(it.shares_missed.size() == 1);
    CHECK(it.shares_missed[0].limit.key == "premix");
}

TEST_CASE("shares that cannot add up give way last", "[blend]") {
    auto feeds = grain_and_meal;
    feeds[0].at_most = feeds[1].at_most = 0.4;
    auto const it = blend(wish({{"protein", {10, {}}}}), feeds, {});
    REQUIRE(it.status == BlendStatus::impossible);
    CHECK_THAT(it.parts[0].share + it.parts[1].share, WithinAbs(1, 1e-9));
}

TEST_CASE("the price below which an ingredient comes in", "[blend]") {
    // pulse of 26 %: half grain, half meal is worth 0.4
    auto feeds = grain_and_meal;
    feeds.push_back(ingredient("pulse", 0.5, {{"protein", 26}}));
    auto const dear = blend(wish({{"protein", {20, {}}}}), feeds, {});
    CHECK_THAT(dear.parts[2].share, WithinAbs(0, 1e-9));
    CHECK_THAT(in_money_per_kilogram(*dear.parts[2].enters_below), WithinAbs(0.4, 1e-9));
    feeds[2].price = money_per_kilogram(0.399);
    CHECK(blend(wish({{"protein", {20, {}}}}), feeds, {}).parts[2].share > 0.1);
}

TEST_CASE("what states no energy is never taken for a mix without any", "[blend]") {
    // 20 % for 2800 kcal/kg; of two feeds that state no energy a mix is held to the whole 20 %
    auto const it = blend(wish({}), grain_and_meal, young_birds(), NeedScale::by_energy);
    CHECK_THAT(*finding(it, "protein").floor, WithinAbs(20, 1e-9));
    CHECK_THAT(it.parts[1].share, WithinAbs(1.0 / 3, 1e-9));
    // with a meal of 1400 kcal/kg, a third of it: (2/3 + 1/3 * 1/2) * 20 = 16.67 %; exact share s: 8 + 36 s = 20 (1 -
    // s/2)
    auto feeds = grain_and_meal;
    feeds[1].holds["energy"] = {1400, 1400, {}};
    CHECK_THAT(blend(wish({}), feeds, young_birds(), NeedScale::by_energy).parts[1].share, WithinAbs(12.0 / 46, 1e-9));
}

TEST_CASE("a mineral is not silent on what no mineral holds, and has no energy", "[blend]") {
    // 20 % for 2800 kcal/kg; grain and meal of 2800, a tenth of chalk: the need is 18 %
    auto feeds = grain_and_meal;
    for (auto& one : feeds) one.holds["energy"] = {2800, 2800, {}};
    feeds.push_back(ingredient("chalk", 0.1, {{"calcium", 38}}));
    feeds[2].mineral = true;
    feeds[2].at_least = feeds[2].at_most.emplace(0.1);
    auto const it = blend(wish({}), feeds, young_birds(), NeedScale::by_energy);
    CHECK_THAT(*finding(it, "protein").floor, WithinAbs(18, 1e-9));
    CHECK(finding(it, "protein").silent.empty());
    CHECK(finding(it, "calcium").silent.size() == 2);
}

TEST_CASE("a ceiling that rests on what is not stated is not shown to be kept", "[blend]") {
    auto feeds = grain_and_meal;
    feeds[1].holds["fibre"] = {4, 4, {}};
    auto const fibre = finding(blend(wish({{"protein", {20, {}}}, {"fibre", {{}, 5}}}), feeds, {}), "fibre");
    CHECK(fibre.verdict == Verdict::meets);
    CHECK_FALSE(fibre.shown);
}

TEST_CASE("a limit on what nobody states keeps its figure", "[blend]") {
    auto const it = blend(wish({{"zinc", {50, {}}}, {"fibre", {{}, 6}}}), grain_and_meal, {});
    CHECK(finding(it, "zinc").floor == 50.0);
    CHECK(finding(it, "fibre").ceiling == 6.0);
    CHECK(finding(it, "fibre").verdict == Verdict::unstated);
}

TEST_CASE("an ingredient named twice counts once in the choice", "[blend]") {
    domain::Blend twice;
    twice.use = {"meal", "meal"};
    CHECK(rations::chosen({}, twice, grain_and_meal).size() == 1);
}

TEST_CASE("needs that go with the energy", "[blend]") {
    // 20 % for 2800 kcal/kg; a mix of 2100 kcal/kg needs 15 %: grain 8 and meal 44 give it at 7/36 meal
    auto feeds = grain_and_meal;
    for (auto& one : feeds) one.holds["energy"] = {2100, 2100, {}};
    auto const it = blend(wish({}), feeds, young_birds(), NeedScale::by_energy);
    CHECK_THAT(it.parts[1].share, WithinAbs(7.0 / 36, 1e-9));
    CHECK_THAT(*finding(it, "protein").floor, WithinAbs(15, 1e-9));
}

TEST_CASE("a medicated feed in a given mix is warned of", "[blend]") {
    auto feeds = grain_and_meal;
    feeds[1].medicated = true;
    auto given = wish({});
    given.amounts = {{"grain", kilograms(60)}, {"meal", kilograms(40)}};
    auto const it = blend(given, feeds, {});
    CHECK(it.status == BlendStatus::given);
    CHECK(it.cautions.at(0).id == "medicated-in-mix");
}
