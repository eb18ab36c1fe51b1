// Published rations and linear programs, read from files as a user writes them.
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

#include "cropful/blends/blend.hpp"
#include "cropful/rations/pantry.hpp"
#include "cropful/readers/farm.hpp"
#include "cropful/store/files.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::WithinAbs;

namespace {

/// The one blend of a file, answered.
blends::BlendAnswer answer(std::string const& text) {
    auto const file = std::filesystem::temp_directory_path() / "cropful_blend_test.toml";
    std::ofstream(file) << text;
    readers::RationsReader const reader;
    auto const farm = readers::parse_blend_file(store::read_text(file.string()), file.string(), reader);
    std::filesystem::remove(file);
    domain::Blend blend = farm.blends.at(0);
    Mass total = kilograms(0);
    for (auto const& one : blend.amounts) total += one.amount;
    if (!blend.batch) blend.batch = blend.amounts.empty() ? kilograms(1000) : total;
    if (!blend.scale) blend.scale = kilograms(1e-6);
    return blends::blend(blend, rations::chosen(farm, blend, rations::pantry(farm, reader.ingredients())), {});
}

double share(blends::BlendAnswer const& answer, std::string const& key) {
    for (auto const& part : answer.parts) {
        if (part.key == key) return 100 * part.share;
    }
    FAIL("no such ingredient: " << key);
    return 0;
}

blends::BlendFinding finding(blends::BlendAnswer const& answer, std::string const& nutrient) {
    for (auto const& one : answer.findings) {
        if (one.nutrient == nutrient) return one;
    }
    FAIL("nothing said of " << nutrient);
    return {};
}

}  // namespace

TEST_CASE("limestone, corn and soybean: 2.817, 64.857 and 32.326 % at 49.156 cents a kg", "[tables]") {
    // the problem: brainmass.com 209960; the corner: calcium at its most and protein at its least, by elimination:
    // 0.38 l + 0.001 c + 0.002 s = 0.012, 0.09 c + 0.5 s = 0.22, l + c + s = 1
    auto const it = answer(R"(
[ingredient.limestone]
calcium = "38 %"
protein = "0 %"
fibre = "0 %"
price = "0.10/kg"
[ingredient.corn]
calcium = "0.1 %"
protein = "9 %"
fibre = "2 %"
price = "0.305/kg"
[ingredient.soybean]
calcium = "0.2 %"
protein = "50 %"
fibre = "8 %"
price = "0.90/kg"
[blend.feed]
need = { calcium = ["0.8 %", "1.2 %"], protein = "22 %", fibre = ["0 %", "5 %"] }
)");
    REQUIRE(it.status == blends::BlendStatus::least_cost);
    CHECK_THAT(share(it, "limestone"), WithinAbs(2.817, 0.0005));
    CHECK_THAT(share(it, "corn"), WithinAbs(64.857, 0.0005));
    CHECK_THAT(share(it, "soybean"), WithinAbs(32.326, 0.0005));
    CHECK_THAT(100 * in_money_per_kilogram(*it.cost), WithinAbs(49.156, 0.0005));
    CHECK_THAT(finding(it, "fibre").level, WithinAbs(3.88, 0.005));
}

TEST_CASE("the diet problem: 470.59 kg of corn and 329.41 kg of soybean for 437.65", "[tables]") {
    // coursehero.com 74238555, an example of Taha, Operations Research: 800 kg, protein at least 30 %, fibre at most 5
    // %
    auto const it = answer(R"(
[ingredient.corn]
protein = "9 %"
fibre = "2 %"
price = "0.30/kg"
[ingredient.soybean]
protein = "60 %"
fibre = "6 %"
price = "0.90/kg"
[blend.special]
batch = "800 kg"
need = { protein = "30 %", fibre = ["0 %", "5 %"] }
)");
    CHECK_THAT(8 * share(it, "corn"), WithinAbs(470.59, 0.005));
    CHECK_THAT(8 * share(it, "soybean"), WithinAbs(329.41, 0.005));
    CHECK_THAT(in_money(*it.batch_cost), WithinAbs(437.65, 0.005));
}

TEST_CASE("four grains: 0.4, 0.2, 0.4 and none, at 1.36 a kg", "[tables]") {
    // jiskha.com 124789: kJ, g of protein and mg of vitamin A per kg; the vitamin stands as riboflavin, also in mg
    auto const it = answer(R"(
[ingredient.sunflower]
energy = "10 MJ/kg"
protein = "14 %"
riboflavin = "12 mg/kg"
price = "2.40/kg"
[ingredient.sorghum]
energy = "7 MJ/kg"
protein = "10 %"
riboflavin = "2 mg/kg"
price = "1.00/kg"
[ingredient.maize]
energy = "9 MJ/kg"
protein = "5 %"
riboflavin = "3 mg/kg"
price = "0.50/kg"
[ingredient.wheat]
energy = "8 MJ/kg"
protein = "8 %"
riboflavin = "6 mg/kg"
price = "1.20/kg"
[blend.grains]
need = { energy = "6.4 MJ/kg", protein = "9.6 %", riboflavin = "6.4 mg/kg" }
)");
    CHECK_THAT(share(it, "sunflower"), WithinAbs(40, 1e-6));
    CHECK_THAT(share(it, "sorghum"), WithinAbs(20, 1e-6));
    CHECK_THAT(share(it, "maize"), WithinAbs(40, 1e-6));
    CHECK_THAT(share(it, "wheat"), WithinAbs(0, 1e-6));
    CHECK_THAT(in_money_per_kilogram(*it.cost), WithinAbs(1.36, 1e-9));
}

TEST_CASE("a ration of laying quail as published, analysed", "[tables]") {
    // PLoS ONE 2021, pone.0245615, Table 1, T1: corn of 7.88 % and meal of 45 % protein are theirs; its amino acids'
    // nitrogen: threonine 73.5, tryptophan 85.8 % as protein (N x 6.25). The rest holds none of what is compared.
    auto const it = answer(R"(
[ingredient.corn]
like = "corn_yellow"
protein = "7.88 %"
[ingredient.soybean]
like = "sbm_44"
protein = "45 %"
[ingredient.threonine]
protein = "73.5 %"
[ingredient.tryptophan]
protein = "85.8 %"
[ingredient.rest]
title = "choline, premixes, starch, inert"
[blend.T1.amounts]
corn = "58.466 kg"
soybean = "30.071 kg"
soy_oil = "0.906 kg"
limestone = "7.041 kg"
dicalcium_phosphate = "1.142 kg"
salt = "0.326 kg"
lysine_hcl = "0.342 kg"
threonine = "0.078 kg"
tryptophan = "0.040 kg"
dl_methionine = "0.441 kg"
rest = "1.147 kg"
)");
    CHECK_THAT(in_kilograms(it.batch), WithinAbs(100, 1e-9));
    CHECK_THAT(finding(it, "protein").level, WithinAbs(18.80, 0.1));
    CHECK_THAT(finding(it, "calcium").level, WithinAbs(2.99, 0.05));
    CHECK_THAT(finding(it, "npp").level, WithinAbs(0.31, 0.035));  // 0.03 and half of its last digit
    CHECK_THAT(finding(it, "sodium").level, WithinAbs(0.15, 0.01));
}

TEST_CASE("minerals after the square: 24.3 g of dicalcium phosphate and 12.95 g of limestone", "[tables]") {
    // teaching slides, Balancing calcium and phosphorus: a diet that gives 9.6 g of calcium and 5.5 g of phosphorus
    // needs 20 and 10 g. In 10 kg, of which the diet is the rest.
    auto const it = answer(R"(
[ingredient.dical]
like = "dicalcium_phosphate_slide"
[ingredient.lime]
like = "limestone_slide"
[blend.minerals.amounts]
dical = "24.3 g"
lime = "12.95 g"
)");
    double const grams = 24.3 + 12.95;
    CHECK_THAT(finding(it, "phosphorus").level / 100 * grams, WithinAbs(10 - 5.5, 0.01));
    CHECK_THAT(finding(it, "calcium").level / 100 * grams, WithinAbs(20 - 9.6, 0.01));
}

TEST_CASE("the demo mixes keep what does not harm birds", "[tables]") {
    // at most 1.2 % of calcium, and 2.5 times the nonphytate phosphorus, for birds that do not lay (common practice;
    // harm of more: NRC 1994, chapter 6); 1.07 times the energy of the table, 2800 kcal/kg for bobwhites
    readers::RationsReader const reader;
    auto const farm =
        readers::parse_blend_file(store::read_text("rations/farms/mixing.toml"), "rations/farms/mixing.toml", reader);
    auto const pantry = rations::pantry(farm, reader.ingredients());
    for (domain::Blend const& blend : farm.blends) {
        if (!blend.amounts.empty()) continue;
        INFO(blend.name);
        auto const kind = reader.kind(*blend.kind);
        auto const table = reader.needs(kind.needs_table);
        auto const it = blends::blend(
            blend, rations::chosen(farm, blend, pantry),
            blends::BlendNeeds{kind.title, table, rations::phase_for(table, blend), reader.blend_tables()});
        CHECK(it.status == blends::BlendStatus::least_cost);
        CHECK(it.not_kept.empty());
        for (auto const& one : it.findings) {
            CHECK(
                (one.verdict == engine::Verdict::meets || one.verdict == engine::Verdict::unstated || one.by_rounding));
        }
        if (blend.laying) continue;
        double const calcium = finding(it, "calcium").most, phosphorus = finding(it, "npp").level;
        CHECK(calcium <= 1.2 * 1.01);  // a hundredth for the scale's step
        CHECK(calcium <= 2.5 * phosphorus * 1.01);
        CHECK(finding(it, "energy").level <= 1.07 * 2800 * 1.001);
    }
}

TEST_CASE("bobwhites over 6 wk get the lysine that other kinds need", "[tables]") {
    // between 0.8 % of pheasants of 9 to 17 wk and 1.3 % of growing Japanese quail (National Research Council, 1994)
    readers::RationsReader const reader;
    auto const kind = reader.kind("bobwhite");
    auto const table = reader.needs(kind.needs_table);
    domain::Blend wish;
    wish.kind = "bobwhite";
    wish.phase = "over 6 wk";
    wish.batch = kilograms(1000);
    wish.scale = kilograms(0.001);
    std::vector<domain::Ingredient> feeds;
    for (auto one : reader.ingredients()) {
        for (char const* key :
             {"corn_yellow", "sbm_485", "corn_gluten_60", "limestone", "dicalcium_phosphate", "salt"}) {
            if (one.key != key) continue;
            one.price = money_per_kilogram(one.key == "sbm_485" ? 0.9 : one.key == "limestone" ? 0.05 : 0.3);
            feeds.push_back(one);
        }
    }
    auto const it = blends::blend(
        wish, feeds, blends::BlendNeeds{kind.title, table, rations::phase_for(table, wish), reader.blend_tables()});
    REQUIRE(it.status == blends::BlendStatus::least_cost);
    auto const lysine = finding(it, "lysine");
    CHECK(lysine.floor_borrowed);
    CHECK(lysine.level >= 0.8);
    CHECK(lysine.level <= 1.3);
    CHECK(finding(it, "calcium").most <= 1.2 * 1.001);
}
