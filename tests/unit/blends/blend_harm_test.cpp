// What harms birds whoever they are, and floors lent by other kinds; worked by hand.
#include <catch2/catch.hpp>

#include "blends.hpp"

using namespace cropful;
using namespace cropful::blends;
using namespace cropful::rations;
using namespace cropful::quantities;
using Catch::WithinAbs;
using sample::fine_wish;
using sample::ingredient;

namespace {

Source const practice{"a test", domain::Standing::common_practice};

BlendRule rule(std::string const& nutrient, bool laying, double at_most, std::string const& per = "") {
    BlendRule one;
    one.key = nutrient;
    one.laying = laying;
    one.at_most = at_most;
    one.per = per;
    one.why = "a test";
    one.source = practice;
    return one;
}

/// 1.2 % of calcium for growing birds, 4.5 % for layers; 3 % of salt in feed is deadly.
BlendNeeds nobody() {
    BlendNeeds needs;
    needs.tables.rules = {rule("calcium", false, 1.2), rule("calcium", true, 4.5)};
    needs.tables.limits = {{.key = "salt_feed",
                            .applies = "chicks",
                            .level = 3,
                            .words = "3 %",
                            .meaning = "",
                            .stop = true,
                            .source = {}}};
    return needs;
}

/// 20 % of protein in a feed of 2800 kcal/kg, from a start at some age.
BlendNeeds birds_of(double from_days) {
    BlendNeeds needs = nobody();
    needs.kind_title = "test birds";
    needs.phase = {.name = "young",
                   .laying = false,
                   .from = days(from_days),
                   .to = {},
                   .energy = kilocalories_per_kilogram(2800),
                   .needs = {{"protein", 20, false}}};
    return needs;
}

// limestone is the cheapest thing there is
Ingredient const lime = ingredient("lime", 0.05, {{"calcium", 38}, {"npp", 0}});
Ingredient const grain = ingredient("grain", 0.2, {{"calcium", 0}, {"npp", 0.4}});

double lime_share(BlendAnswer const& answer) { return answer.parts.at(0).share; }

bool cautioned(BlendAnswer const& answer, std::string const& id) {
    return std::any_of(answer.cautions.begin(), answer.cautions.end(),
                       [&](domain::Caution const& one) { return one.id == id; });
}

}  // namespace

TEST_CASE("without a kind a mix is held to the ceilings of growing birds", "[blend]") {
    // 1.2 % of calcium is 1.2 / 38 of limestone
    auto const it = blend(fine_wish({}), {lime, grain}, nobody());
    CHECK_THAT(lime_share(it), WithinAbs(1.2 / 38, 1e-7));
    CHECK(it.not_kept.empty());
    CHECK_FALSE(it.laying);
    // and to those of layers where the blend says so
    auto layers = fine_wish({});
    layers.laying = true;
    CHECK_THAT(lime_share(blend(layers, {lime, grain}, nobody())), WithinAbs(4.5 / 38, 1e-7));
}

TEST_CASE("calcium goes with nonphytate phosphorus", "[blend]") {
    // 38 s <= 2 * 0.4 (1 - s): s = 0.8 / 38.8
    auto needs = nobody();
    needs.tables.rules.push_back(rule("calcium", false, 2, "npp"));
    auto const it = blend(fine_wish({}), {lime, grain}, needs);
    CHECK_THAT(lime_share(it), WithinAbs(0.8 / 38.8, 1e-7));
    // for one more time: the next step is 2.5 times, s = 1 / 39, and 0.15 a kg are saved for each share
    REQUIRE(it.prices.size() == 1);
    CHECK_THAT(in_money_per_kilogram(*it.prices[0].change), WithinAbs(-0.15 * (1.0 / 39 - 0.8 / 38.8), 1e-9));
    // ds / dL at L = 2: s = 0.4 L / (38 + 0.4 L), so 0.4 * 38 / 38.8^2
    CHECK_THAT(it.prices[0].dual, WithinAbs(-0.15 * 0.4 * 38 / (38.8 * 38.8), 1e-9));
    // where nothing states the other one, the ratio is not known
    auto silent = std::vector{ingredient("lime", 0.05, {{"calcium", 38}}), ingredient("grain", 0.2, {{"calcium", 0}})};
    CHECK_THAT(lime_share(blend(fine_wish({}), silent, needs)), WithinAbs(1.2 / 38, 1e-7));
}

TEST_CASE("an owner's figures go before a ceiling, and that is said", "[blend]") {
    // a least above the ceiling of growing birds: still no more than layers stand
    auto it = blend(fine_wish({{"calcium", {2.0, {}}}}), {lime, grain}, nobody());
    CHECK_THAT(lime_share(it), WithinAbs(4.5 / 38, 1e-7));
    REQUIRE(it.not_kept.size() == 1);
    CHECK(it.not_kept[0].limit.level == 1.2);
    CHECK_THAT(it.not_kept[0].reached, WithinAbs(4.5, 1e-3));
    it = blend(fine_wish({{"calcium", {{}, 2.0}}}), {lime, grain}, nobody());
    CHECK_THAT(lime_share(it), WithinAbs(2.0 / 38, 1e-7));
    CHECK(it.not_kept.size() == 1);
    CHECK(blend(fine_wish({{"calcium", {{}, 1.0}}}), {lime, grain}, nobody()).not_kept.empty());
}

TEST_CASE("a given mix above a ceiling says so first", "[blend]") {
    // 3 of 100 kg of limestone are 1.14 % of calcium, 4 are 1.52 %
    auto given = fine_wish({});
    given.amounts = {{"lime", kilograms(3)}, {"grain", kilograms(97)}};
    CHECK(blend(given, {lime, grain}, nobody()).not_kept.empty());
    given.amounts = {{"lime", kilograms(4)}, {"grain", kilograms(96)}};
    auto const it = blend(given, {lime, grain}, nobody());
    REQUIRE(it.not_kept.size() == 1);
    CHECK_THAT(it.not_kept[0].reached, WithinAbs(1.52, 1e-9));
}

TEST_CASE("a mix with as much sodium as deadly salt", "[blend]") {
    // salt is 39.34 % sodium: 3 of 100 kg are 1.18 %
    std::vector<Ingredient> const feeds{ingredient("salt", 0.1, {{"sodium", 39.34}}),
                                        ingredient("grain", 0.2, {{"sodium", 0}})};
    auto given = fine_wish({});
    given.amounts = {{"salt", kilograms(2.9)}, {"grain", kilograms(97.1)}};
    CHECK_FALSE(cautioned(blend(given, feeds, nobody()), "salt-lethal"));
    given.amounts = {{"salt", kilograms(3.1)}, {"grain", kilograms(96.9)}};
    CHECK(cautioned(blend(given, feeds, nobody()), "salt-lethal"));
}

TEST_CASE("energy is held to 1.07 times the table's, but for needs that go with the energy", "[blend]") {
    // 2996 kcal/kg of corn with 3400 and bran with 2000: (2996 - 2000) / 1400 of corn, the cheaper
    std::vector<Ingredient> const feeds{ingredient("corn", 0.1, {{"protein", 20}, {"energy", 3400}}),
                                        ingredient("bran", 0.2, {{"protein", 20}, {"energy", 2000}})};
    auto needs = birds_of(0);
    auto most = rule("energy", false, 1.07);
    most.of_table = true;
    needs.tables.rules.push_back(most);
    CHECK_THAT(blend(fine_wish({}), feeds, needs).parts[0].share, WithinAbs(996.0 / 1400, 1e-7));
    auto const scaled = fine_wish({{"protein", {10, {}}}});
    CHECK_THAT(blend(scaled, feeds, needs, NeedScale::by_energy).parts[0].share, WithinAbs(1, 1e-7));
    needs.kind_title.clear();  // of no kind there is no table
    CHECK_THAT(blend(fine_wish({}), feeds, needs).parts[0].share, WithinAbs(1, 1e-7));
}

TEST_CASE("a floor is borrowed where the table is silent, by the age a phase starts at", "[blend]") {
    std::vector<Ingredient> const feeds{ingredient("grain", 0.1, {{"protein", 20}, {"lysine", 0.4}, {"energy", 2800}}),
                                        ingredient("meal", 0.5, {{"protein", 20}, {"lysine", 2.4}, {"energy", 2800}})};
    auto const [from, floor] = GENERATE(table<double, double>({{0, 1.3}, {28, 1.3}, {42, 0.9}}));
    auto needs = birds_of(from);
    needs.tables.guides = {
        {.nutrient = "lysine", .laying = false, .from = days(0), .to = days(42), .at_least = 1.3, .source = practice},
        {.nutrient = "lysine", .laying = false, .from = days(42), .to = {}, .at_least = 0.9, .source = practice},
        {.nutrient = "lysine", .laying = true, .from = days(0), .to = {}, .at_least = 2, .source = practice}};
    auto const lysine = [](BlendAnswer const& answer) {
        return *std::find_if(answer.findings.begin(), answer.findings.end(),
                             [](BlendFinding const& one) { return one.nutrient == "lysine"; });
    };
    auto const it = blend(fine_wish({}), feeds, needs);
    CHECK_THAT(it.parts[1].share, WithinAbs((floor - 0.4) / 2, 1e-7));
    CHECK(lysine(it).floor_borrowed);
    // the owner's own floor, or the table's, is no borrowed one
    auto const own = lysine(blend(fine_wish({{"lysine", {1.0, {}}}}), feeds, needs));
    CHECK(own.floor == 1.0);
    CHECK_FALSE(own.floor_borrowed);
    needs.phase.needs.push_back({"lysine", 1.1, false});
    CHECK(lysine(blend(fine_wish({}), feeds, needs)).floor == 1.1);
    CHECK_FALSE(lysine(blend(fine_wish({}), feeds, needs)).floor_borrowed);
}
