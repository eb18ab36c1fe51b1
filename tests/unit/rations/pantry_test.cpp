// Which ingredients a blend uses, and which needs it is held to.
#include "cropful/rations/pantry.hpp"

#include <catch2/catch.hpp>

using namespace cropful;
using namespace cropful::quantities;
using Catch::Contains;
using Catch::WithinAbs;

namespace {

domain::Ingredient ingredient(std::string const& key, std::string const& title) {
    domain::Ingredient one;
    one.key = key;
    one.title = title;
    return one;
}

rations::NeedsTable without_layers() {
    rations::NeedsTable table;
    table.title = "Test birds";
    table.phases = {{.name = "young", .laying = false, .from = days(0), .to = days(42), .energy = {}, .needs = {}}};
    return table;
}

}  // namespace

TEST_CASE("a farm's own ingredient comes before the built-in one of its name", "[blend]") {
    domain::Farm farm;
    farm.ingredients = {ingredient("corn", "mine")};
    auto const all = rations::pantry(farm, {ingredient("corn", "built in"), ingredient("oats", "built in")});
    REQUIRE(all.size() == 2);
    CHECK(all[0].title == "mine");
    CHECK(all[1].key == "oats");
}

TEST_CASE("a bag of feed: 20 for 50 kg is 0.40 a kg, its protein a minimum", "[blend]") {
    domain::Farm farm;
    domain::Feed feed;
    feed.key = "starter";
    feed.label["protein"].minimum = 24;
    feed.bag = kilograms(50);
    feed.price = money(20);
    feed.label["calcium"] = {.minimum = 0.8, .maximum = 1.2};
    feed.label["sodium"] = {.minimum = {}, .maximum = 0.2};
    feed.label["fibre"] = {.minimum = {}, .maximum = 5};
    farm.feeds.emplace("starter", feed);
    auto const one = rations::pantry(farm, {}).at(0);
    CHECK_THAT(in_money_per_kilogram(*one.price), WithinAbs(0.4, 1e-12));
    CHECK_THAT(one.holds.at("protein").least, WithinAbs(24, 1e-12));
    CHECK_FALSE(one.holds.at("protein").most);
    CHECK_THAT(*one.holds.at("calcium").most, WithinAbs(1.2, 1e-12));
    CHECK_THAT(one.holds.at("fibre").least, WithinAbs(5, 1e-12));  // the most, which a ceiling must reckon with
    CHECK_FALSE(one.holds.contains("sodium"));                     // of others it says nothing of what is in the feed
}

TEST_CASE("the phase of a blend", "[blend]") {
    auto const table = without_layers();
    domain::Blend blend;
    CHECK_THROWS_WITH(rations::phase_for(table, blend), Contains("laying, or a phase: one of \"young\""));
    blend.age = days(41);
    CHECK(rations::phase_for(table, blend).name == "young");
    blend.age = days(42);
    CHECK_THROWS_WITH(rations::phase_for(table, blend), Contains("the age 6 wk") && Contains("an age of the phases"));
    blend.laying = true;
    CHECK_THROWS_WITH(rations::phase_for(table, blend), Contains("birds in lay") && Contains("a phase of Test birds"));
}
