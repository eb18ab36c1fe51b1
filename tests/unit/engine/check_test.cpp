// Labels against needs by hand. Bobwhite needs (rations/needs/bobwhite.toml, for feeds of 2,800 kcal/kg): protein 26 %
// to 6 wk, 20 % after, 24 % in lay; calcium 0.65, 0.65 and 2.4 %. Its feed table is for 2,850 kcal/kg (2,800 in lay).
#include "cropful/engine/check.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using engine::Check;
using engine::Verdict;

namespace {

/// The protein checks of one feed over these ages.
std::vector<Check> protein(double from_d, double to_d, std::optional<Duration> laying_from = {}) {
    domain::Feed feed;
    feed.key = "feed";
    feed.label["protein"].minimum = 24;
    std::vector<Check> found;
    auto const needs = readers::RationsReader().needs("bobwhite");
    for (auto const& check : engine::check(feed, needs, days(from_d), days(to_d), laying_from)) {
        if (check.nutrient == "protein") found.push_back(check);
    }
    return found;
}

Check find(engine::Plan const& plan, std::string const& feed, std::string const& phase, std::string const& nutrient) {
    for (auto const& check : plan.hatches.at(0).checks) {
        if (check.feed == feed && check.phase == phase && check.nutrient == nutrient) return check;
    }
    FAIL("no check of " << nutrient << " in " << feed << ", " << phase);
    return {};
}

domain::Farm with_calcium(std::optional<double> minimum, std::optional<double> maximum) {
    auto farm = sample::farm_from(sample::bobwhites());
    farm.feeds.at("grower").label["calcium"] = {minimum, maximum};
    return farm;
}

double energy_effect(double have, double want) { return std::pow(have / want, 0.9); }

}  // namespace

TEST_CASE("phases by age", "[check]") {
    auto const both = protein(10, 56);
    REQUIRE(both.size() == 2);
    CHECK(both[0].phase == "0 to 6 wk");
    CHECK(in_days(both[0].from) == 10);
    CHECK(in_days(both[0].to) == 42);
    CHECK(both[0].verdict == Verdict::short_of);
    CHECK_THAT(both[0].short_by, Catch::WithinRel(2.0, 1e-9));
    CHECK(both[1].phase == "over 6 wk");
    CHECK(in_days(both[1].from) == 42);
    CHECK(in_days(both[1].to) == 56);
    CHECK(both[1].verdict == Verdict::meets);
    CHECK(both[1].short_by == 0);
    CHECK(protein(0, 42).size() == 1);  // a phase that begins where the feed ends is not its own
    CHECK(protein(42, 56).size() == 1);
}

TEST_CASE("the laying phase holds from laying on, the growing ones until then", "[check]") {
    auto const grown = protein(56, 200, days(100));
    REQUIRE(grown.size() == 2);
    CHECK(grown[0].phase == "over 6 wk");
    CHECK(in_days(grown[0].to) == 100);
    CHECK(grown[1].phase == "breeding");
    CHECK(in_days(grown[1].from) == 100);
    CHECK(in_days(grown[1].to) == 200);
    CHECK_THAT(grown[1].need, Catch::WithinRel(24.0, 1e-12));
    CHECK(protein(56, 100, days(100)).size() == 1);
    CHECK(protein(110, 200, days(100)).size() == 1);
}

TEST_CASE("calcium: short, enough, and too much for birds that grow", "[check]") {
    // 1.5 % is the lowest limit for growing poultry: NRC (2005), Mineral Tolerance of Animals, from memory.
    auto const verdict = [](std::optional<double> minimum, std::optional<double> maximum) {
        return find(sample::plan_of(with_calcium(minimum, maximum)), "grower", "over 6 wk", "calcium").verdict;
    };
    CHECK(verdict(0.6, {}) == Verdict::short_of);
    CHECK(verdict(0.65, 1.5) == Verdict::meets);
    CHECK(verdict(0.65, 1.6) == Verdict::over);
    CHECK(verdict(2.5, {}) == Verdict::over);
    CHECK(verdict({}, 3.5) == Verdict::over);
}

TEST_CASE("a layer's calcium is right in lay and too much before it", "[check]") {
    auto farm = with_calcium(2.5, 3.5);
    farm.hatches.front().laying_from = days(70);
    auto const plan = sample::plan_of(farm);
    CHECK(find(plan, "grower", "over 6 wk", "calcium").verdict == Verdict::over);
    CHECK(find(plan, "grower", "breeding", "calcium").verdict == Verdict::meets);
}

TEST_CASE("protein per bird: given by the label, needed of the feed as eaten", "[check]") {
    // Day 21, the middle of the starter: 7.7 g of a feed of 2,850; the label says 2,900 and 26 %.
    auto farm = sample::farm_from(sample::bobwhites());
    auto const starter = find(sample::plan_of(farm), "starter", "0 to 6 wk", "protein");
    double const eaten = 7.7 * energy_effect(2850, 2900);
    CHECK_THAT(in_grams(*starter.given_per_bird), Catch::WithinRel(eaten * 0.26, 1e-12));
    CHECK_THAT(in_grams(*starter.need_per_bird), Catch::WithinRel(eaten * 0.26, 1e-12));  // the table asks for 26 % too
    CHECK_THAT(in_grams(*starter.need_per_bird), Catch::WithinAbs(1.971, 0.0005));
}

TEST_CASE("protein per bird in a warm barn, of a label without energy, and in lay", "[check]") {
    // Day 70, the middle of 42 to 98: 14 g, 6 degrees over 24 degC at 1.84 % each.
    auto farm = sample::farm_from(sample::bobwhites());
    farm.hatches.front().until = days(98);
    double const warm = 1 - 6 * 0.0184;
    auto const grower = find(sample::plan_of(farm), "grower", "over 6 wk", "protein");
    CHECK_THAT(in_grams(*grower.given_per_bird), Catch::WithinRel(14 * warm * 0.20, 1e-12));
    CHECK_THAT(in_grams(*grower.need_per_bird), Catch::WithinRel(14 * warm * 0.20, 1e-12));
    // 25.8 g in lay, where both tables are for 2,800 kcal/kg.
    farm.hatches.front().laying_from = days(60);
    auto const laying = find(sample::plan_of(farm), "grower", "breeding", "protein");
    CHECK_THAT(in_grams(*laying.given_per_bird), Catch::WithinRel(25.8 * warm * 0.20, 1e-12));
    CHECK_THAT(in_grams(*laying.need_per_bird), Catch::WithinRel(25.8 * warm * 0.24, 1e-12));
}

TEST_CASE("scaled to a feed's energy, the needs rise in grams as in percent", "[check]") {
    auto const farm = sample::farm_from(sample::bobwhites());
    auto const rations = readers::RationsReader().load(farm);
    auto const scaled =
        find(engine::make_plan(farm, rations, {}, {}, engine::NeedScale::by_energy), "starter", "0 to 6 wk", "protein");
    auto const printed = find(sample::plan_of(farm), "starter", "0 to 6 wk", "protein");
    CHECK_THAT(scaled.need, Catch::WithinRel(26 * 2900.0 / 2800, 1e-12));
    CHECK(scaled.verdict == Verdict::short_of);
    CHECK_THAT(in_grams(*scaled.need_per_bird),
               Catch::WithinRel(in_grams(*printed.need_per_bird) * 2900 / 2800, 1e-12));
}

TEST_CASE("grams a day and the verdict go by the same feed", "[check]") {
    auto const farm = sample::farm_from(sample::bobwhites());  // its starter is richer than the table's feed
    readers::RationsReader const reader;
    for (auto const scale : {engine::NeedScale::as_printed, engine::NeedScale::by_energy}) {
        int judged = 0;
        for (auto const& hatch : engine::make_plan(farm, reader.load(farm), {}, {}, scale).hatches) {
            for (auto const& check : hatch.checks) {
                if (check.nutrient != "protein") continue;
                ++judged;
                double const given = in_grams(*check.given_per_bird), need = in_grams(*check.need_per_bird);
                CHECK_THAT(given, Catch::WithinRel(in_grams(*check.eaten_per_bird) * *check.label / 100, 1e-12));
                CHECK_THAT(given / need, Catch::WithinRel(*check.label / check.need, 1e-12));
                CHECK((given < need * (1 - 1e-9)) == (check.verdict == engine::Verdict::short_of));
            }
        }
        CHECK(judged > 1);
    }
}
