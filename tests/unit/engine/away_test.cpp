// Absences by hand, of birds that are all alike, eat 1 kg and drink 2 L a day (sample::round_figures): only what a
// hopper weighs varies, by 5 %. Normal probabilities: Abramowitz & Stegun (1964), Table 26.1.
#include <catch2/catch.hpp>
#include <cmath>

#include "cropful/engine/away.hpp"
#include "cropful/fault.hpp"
#include "cropful/readers/rations.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

double normal_below(double score) { return std::erfc(-score / std::sqrt(2.0)) / 2; }

engine::Away away_for(domain::Farm const& farm, double length, double from = 200, double sure = 0.95) {
    auto const start = farm.hatches.front().date + days(from);
    auto const rations = sample::without_spread(farm);
    return engine::away({farm, rations}, {start, start + days(length), sure});
}

}  // namespace

TEST_CASE("5 kg for 4 1/2 days: the chance that a fill weighs 9 tenths of the usual", "[away]") {
    auto farm = sample::round_figures();
    farm.hatches.front().drinker.reset();
    auto const away = away_for(farm, 4.5);
    REQUIRE(away.holdings.size() == 1);
    auto const& hopper = away.holdings.front();
    CHECK_THAT(hopper.chance, Catch::WithinAbs(normal_below(std::log(1 / 0.9) / 0.05), 5e-4));
    CHECK_THAT(hopper.fill, Catch::WithinRel(0.9 * std::exp(1.6448536 * 0.05), 1e-3));
    CHECK(hopper.more == 0);
    CHECK_THAT(in_days(*hopper.lasts.p05), Catch::WithinRel(5 * std::exp(-1.6448536 * 0.05), 1e-3));
    CHECK_THAT(in_days(*hopper.lasts.p50), Catch::WithinRel(5.0, 1e-3));
    CHECK_THAT(in_days(*hopper.lasts.p95), Catch::WithinRel(5 * std::exp(1.6448536 * 0.05), 1e-3));
    CHECK_THAT(in_days(*away.come_by - away.absence.from), Catch::WithinRel(5 * std::exp(-1.6448536 * 0.05), 1e-3));
}

TEST_CASE("4 L of water for 2 1/2 days are a fifth short: one drinker more", "[away]") {
    auto const away = away_for(sample::round_figures(), 2.5);
    REQUIRE(away.holdings.size() == 2);
    auto const& drinker = away.holdings.back();
    CHECK(drinker.chance == 0);
    CHECK_THAT(drinker.fill, Catch::WithinRel(1.25, 1e-6));
    CHECK_THAT(in_litres(std::get<Volume>(drinker.leave)), Catch::WithinRel(5.0, 1e-6));
    CHECK(drinker.more == 1);
    CHECK(away.chance == 0);
    REQUIRE(away.first);
    CHECK(*away.first == 1);
    CHECK_THAT(in_days(*away.come_by - away.absence.from), Catch::WithinRel(2.0, 1e-6));
}

TEST_CASE("more drinkers than enough: how full is enough", "[away]") {
    auto farm = sample::round_figures();
    farm.hatches.front().drinkers = 2;
    auto const drinker = away_for(farm, 2).holdings.back();
    CHECK(drinker.chance == 1);
    CHECK_THAT(drinker.fill, Catch::WithinRel(0.5, 1e-6));
    CHECK(drinker.more == 0);
}

TEST_CASE("surer asks for more", "[away]") {
    auto const farm = sample::round_figures();
    double const fill = away_for(farm, 4, 200, 0.99).holdings.front().fill;
    CHECK_THAT(fill, Catch::WithinRel(0.8 * std::exp(2.3263479 * 0.05), 2e-3));
}

TEST_CASE("the feed is not changed and no bird leaves while nobody is there", "[away]") {
    auto farm = sample::round_figures();
    farm.hatches.front().drinker.reset();
    farm.hatches.front().removed = {{days(206), birds(50)}};
    auto const away = away_for(farm, 4, 204);  // grower is due on day 207, 50 birds on 206
    auto const& hopper = away.holdings.front();
    CHECK_THAT(in_kilograms(std::get<Mass>(hopper.content)), Catch::WithinRel(5.0, 1e-9));  // of starter
    CHECK_THAT(hopper.fill, Catch::WithinRel(0.8 * std::exp(1.6448536 * 0.05), 1e-3));
}

TEST_CASE("two hatches: the chances of both are judged in the same worlds", "[away]") {
    auto farm = sample::round_figures();
    farm.hatches.front().drinker.reset();
    farm.hatches.push_back(farm.hatches.front());
    farm.hatches.back().name = "second";
    auto const away = away_for(farm, 4.75);
    double const each = normal_below(std::log(5 / 4.75) / 0.05);  // hoppers are filled apart
    CHECK_THAT(away.holdings[0].chance, Catch::WithinAbs(each, 2e-3));
    CHECK_THAT(away.chance, Catch::WithinAbs(each * each, 5e-3));
}

TEST_CASE("an absence without birds, or with nothing to fill, has no answer", "[away]") {
    auto const farm = sample::round_figures();
    CHECK_THROWS_AS(away_for(farm, 2, 300), NoAnswer);
    auto bare = farm;
    bare.hatches.front().hopper.reset();
    bare.hatches.front().drinker.reset();
    CHECK_THROWS_AS(away_for(bare, 2), NoAnswer);
}

TEST_CASE("feed out of the birds' reach, and what a trough needs, are left as well", "[away]") {
    auto farm = sample::round_figures();
    farm.hoppers.begin()->second.stays_behind = 0.2;  // 4 kg of 5 can be reached
    farm.drinkers.begin()->second.least = litres(3);
    auto const away = away_for(farm, 1);
    double const need = std::exp(1.6448536 * 0.05);  // 1 kg, heavy enough 19 times in 20
    CHECK_THAT(in_kilograms(std::get<Mass>(away.holdings[0].leave)), Catch::WithinRel(need + 1, 1e-3));
    CHECK_THAT(away.holdings[0].full, Catch::WithinRel((need + 1) / 5, 1e-3));
    CHECK_THAT(in_litres(std::get<Volume>(away.holdings[1].leave)), Catch::WithinRel(3.0, 1e-9));
}

TEST_CASE("what hatches, sits under heat or leaves in the absence calls for somebody", "[away]") {
    using engine::Call;
    auto const farm = sample::farm_from(sample::bobwhites());  // 60 leave on day 56; under a brooder to day 35
    auto const calls = [&](double from, double to) {
        auto const date = farm.hatches.front().date;
        auto const rations = readers::RationsReader().load(farm);
        std::vector<std::pair<Call, double>> all;
        for (auto const& one : engine::away({farm, rations}, {date + days(from), date + days(to), 0.95}).errands) {
            CHECK(one.hatch == "April");
            all.emplace_back(one.call, std::round(in_days(one.at - date)));
        }
        return all;
    };
    using Calls = std::vector<std::pair<Call, double>>;
    CHECK(calls(-2, 1) == Calls{{Call::hatching, 0}, {Call::under_heat, 0}});
    CHECK(calls(34, 37) == Calls{{Call::under_heat, 34}});
    CHECK(calls(36, 40).empty());
    CHECK(calls(54, 57) == Calls{{Call::leaving, 56}});
    CHECK(calls(110, 113) == Calls{{Call::leaving, 112}});
}
