// A feed's label against NRC (1994), Nutrient Requirements of Poultry, Tables 6-1 to 6-3: protein 24 % (Japanese quail,
// starting and growing; the figure is also quoted from NRC by Fayoum J., article 197551), 26 % (bobwhite, 0 to 6 wk,
// from memory), 28 % (ring-necked pheasant, 0 to 4 wk, from memory).
#include <catch2/catch.hpp>

#include "cropful/engine/check.hpp"
#include "cropful/readers/rations.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

engine::Check protein(std::string const& kind_key, double label, double from_d, double to_d,
                      std::optional<EnergyPerMass> energy = {},
                      engine::NeedScale scale = engine::NeedScale::as_printed) {
    readers::RationsReader const rations;
    auto const kind = rations.kind(kind_key);
    domain::Feed feed;
    feed.key = "starter";
    feed.label["protein"].minimum = 100 * label;
    feed.energy = energy;
    auto const checks = engine::check(feed, rations.needs(kind.needs_table), days(from_d), days(to_d), {}, scale);
    for (auto const& check : checks) {
        if (check.nutrient == "protein") return check;
    }
    FAIL("no protein check");
    return {};
}

}  // namespace

TEST_CASE("a 24 % starter meets coturnix and is short for bobwhite and pheasant", "[tables]") {
    CHECK(protein("coturnix", 0.24, 0, 42).verdict == engine::Verdict::meets);
    auto const bobwhite = protein("bobwhite", 0.24, 0, 42);
    CHECK(bobwhite.verdict == engine::Verdict::short_of);
    CHECK_THAT(bobwhite.short_by, Catch::WithinAbs(2, 1e-9));
    CHECK_THAT(bobwhite.short_by / bobwhite.need * 100, Catch::WithinAbs(7.7, 0.05));
    CHECK_THAT(protein("pheasant", 0.24, 0, 28).short_by, Catch::WithinAbs(4, 1e-9));
}

TEST_CASE("needs scale with the feed's energy only when asked", "[tables]") {
    auto const rich = kilocalories_per_kilogram(3080);  // table: 2,800 kcal/kg; 26 % x 1.1 = 28.6 %
    CHECK_THAT(protein("bobwhite", 0.26, 0, 42, rich).need, Catch::WithinAbs(26, 1e-9));
    CHECK_THAT(protein("bobwhite", 0.26, 0, 42, rich, engine::NeedScale::by_energy).need, Catch::WithinAbs(28.6, 1e-9));
}

TEST_CASE("what a label does not state is unstated, not zero and not met", "[tables]") {
    readers::RationsReader const rations;
    auto const kind = rations.kind("coturnix");
    domain::Feed feed;
    feed.label["protein"].minimum = 24;
    feed.label["lysine"].minimum = 1.3;
    for (auto const& check : engine::check(feed, rations.needs(kind.needs_table), days(0), days(42), {})) {
        INFO(check.nutrient);
        bool const stated = check.nutrient == "protein" || check.nutrient == "lysine";
        CHECK(check.verdict == (stated ? engine::Verdict::meets : engine::Verdict::unstated));
    }
}
