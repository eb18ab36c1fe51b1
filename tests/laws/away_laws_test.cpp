// What any absence and any diary must keep, whatever the figures.
#include <catch2/catch.hpp>

#include "cropful/engine/away.hpp"
#include "cropful/readers/rations.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

engine::Away away_for(domain::Farm const& farm, double length, double sure = 0.95, domain::Diary const& diary = {}) {
    auto const from = farm.hatches.front().date + days(30);
    auto const rations = readers::RationsReader().load(farm);
    return engine::away({farm, rations, diary}, {from, from + days(length), sure});
}

domain::Farm bobwhites() { return sample::farm_from(sample::bobwhites()); }

}  // namespace

TEST_CASE("longer is never surer", "[laws]") {
    auto const farm = bobwhites();
    double last = 1;
    for (double const length : {1.0, 4.0, 7.0, 10.0, 13.0}) {
        double const chance = away_for(farm, length).chance;
        CHECK(chance <= last);
        last = chance;
    }
    CHECK(last < 0.5);
}

TEST_CASE("everything holds no more often than its weakest vessel, and no less than if all were strangers", "[laws]") {
    auto const away = away_for(bobwhites(), 7.5);
    double weakest = 1, strangers = 1;
    for (auto const& holding : away.holdings) {
        weakest = std::min(weakest, holding.chance);
        strangers *= holding.chance;
    }
    REQUIRE(weakest < 0.999);
    CHECK(away.chance <= weakest);
    CHECK(away.chance >= strangers);
}

TEST_CASE("surer asks for a fuller vessel and an earlier return", "[laws]") {
    auto const farm = bobwhites();
    auto const sure = away_for(farm, 5, 0.9), surer = away_for(farm, 5, 0.99);
    for (std::size_t i = 0; i < sure.holdings.size(); ++i) {
        CHECK(surer.holdings[i].fill > sure.holdings[i].fill);
        CHECK(*surer.holdings[i].safe_for < *sure.holdings[i].safe_for);
    }
    CHECK(*surer.come_by < *sure.come_by);
}

TEST_CASE("as full as advised is as sure as asked", "[laws]") {
    auto farm = bobwhites();
    auto const away = away_for(farm, 5);
    for (auto& [key, hopper] : farm.hoppers) hopper.fill *= away.holdings[0].fill;
    CHECK_THAT(away_for(farm, 5).holdings[0].chance, Catch::WithinAbs(0.95, 1e-3));
}

TEST_CASE("birds that ate more and more often are known better and thought hungrier", "[laws]") {
    auto const farm = bobwhites();
    auto const& hatch = farm.hatches.front();
    auto const rations = readers::RationsReader().load(farm);
    domain::Diary diary;
    auto width = [&] {
        auto const plan = engine::make_plan(farm, rations, {hatch.date + days(30), hatch.date + days(37)}, diary);
        auto const& band = plan.hatches.front().feeds.front().band;
        return std::pair(in_kilograms(band.p95 - band.p05), in_kilograms(band.p50));
    };
    auto const [untaught, usual] = width();
    for (int visit = 0; visit < 6; ++visit) {
        double const put_in = 1.15 * 2 * usual / 7 * (1 - 0.03 * (5 - visit));
        diary.push_back(
            {hatch.date + days(18 + 2 * visit), hatch.name, domain::Deed::topped_up, kilograms(put_in), ""});
    }
    auto const [taught, learned] = width();
    CHECK(taught < untaught);
    CHECK(learned > usual);
}
