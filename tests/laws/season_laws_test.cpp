// Laws of placing hatches and of adding up days, whatever the figures in the tables are.
#include <catch2/catch.hpp>
#include <random>

#include "cropful/engine/overview.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

/// Hatches of bobwhites that crowd one sort of brooder, by the luck of `seed`.
domain::Farm crowded(unsigned seed) {
    std::mt19937 luck(seed);
    auto const from = [&](int low, int high) {
        return low + static_cast<int>(luck() % static_cast<unsigned>(high - low + 1));
    };
    auto farm = sample::farm_from(sample::bobwhites());
    domain::Brooder box;
    box.key = "box";
    box.count = from(1, 5);
    box.holds = {{days(0), birds(from(40, 120))}, {days(from(7, 28)), birds(from(30, 90))}};
    box.until = days(from(14, 50));
    box.rest = days(from(0, 7));
    farm.brooders.emplace("box", box);
    auto const one = farm.hatches.front();
    farm.hatches.clear();
    double gone = 0;
    for (int i = 0; i < 7; ++i) {
        auto hatch = one;
        hatch.name = "H" + std::to_string(i);
        hatch.date = one.date + days(gone);
        gone += from(0, 25);
        hatch.chicks = birds(from(70, 240));
        hatch.brooder = "box";
        farm.hatches.push_back(hatch);
    }
    return farm;
}

engine::Placement placed(domain::Farm const& farm) {
    static auto const rations = readers::RationsReader().load(farm);  // all are bobwhites
    return engine::place({farm, rations}, engine::Fits::sought);
}

double without_place(domain::Farm const& farm) {
    double sum = 0;
    for (auto const& one : placed(farm).unplaced) sum += in_birds(one.birds);
    return sum;
}

}  // namespace

TEST_CASE("another brooder never leaves more birds without a place", "[laws]") {
    auto farm = crowded(GENERATE(take(100, random(1U, 1000000U))));
    double last = without_place(farm);
    for (int more = 0; more < 12; ++more) {
        farm.brooders.at("box").count += 1;
        double const now = without_place(farm);
        CHECK(now <= last);
        last = now;
    }
    farm.brooders.at("box").count = 1000;
    CHECK(without_place(farm) == 0);
}

TEST_CASE("less rest never leaves more of two hatches without a place", "[laws]") {
    auto farm = crowded(GENERATE(take(30, random(1U, 1000000U))));
    farm.hatches.erase(farm.hatches.begin() + 2, farm.hatches.end());
    double const last = without_place(farm);
    farm.brooders.at("box").rest = days(0);
    CHECK(without_place(farm) <= last);
}

TEST_CASE("a hatch on the date on which it fits has a place, and nobody loses one", "[laws]") {
    auto const farm = crowded(GENERATE(take(60, random(1U, 1000000U))));
    auto const before = placed(farm);
    for (auto const& one : before.unplaced) {
        for (auto const& date : {one.fits_before, one.fits_after}) {
            if (!date) continue;
            auto moved = farm;
            for (auto& hatch : moved.hatches) {
                if (hatch.name == one.hatch) hatch.date = *date;
            }
            std::stable_sort(moved.hatches.begin(), moved.hatches.end(),
                             [](auto const& a, auto const& b) { return a.date < b.date; });
            auto const after = placed(moved);
            for (auto const& left : after.unplaced) CHECK(left.hatch != one.hatch);
            CHECK(after.unplaced.size() < before.unplaced.size());
        }
    }
}

TEST_CASE("a season's days add up to the plan's feed and to the season in two parts", "[laws]") {
    auto const farm = crowded(GENERATE(1U, 2U, 3U));
    auto const rations = readers::RationsReader().load(farm);
    auto const kilograms_in = [](engine::Overview const& overview) {
        double sum = 0;
        for (auto const& day : overview.days) {
            for (auto const& eaten : day.feeds) sum += in_kilograms(eaten.amount);
        }
        return sum;
    };
    engine::Season const season(farm, rations);
    auto const whole = engine::make_overview(season);
    double planned = 0;
    for (auto const& feed : engine::make_plan(farm, rations).feeds) planned += in_kilograms(feed.need);
    CHECK_THAT(kilograms_in(whole), Catch::WithinRel(planned, 1e-12));
    domain::Moment const middle((farm.hatches.front().date + days(50)).date());  // an overview is of whole days
    CHECK_THAT(kilograms_in(engine::make_overview(season, {{}, middle})) +
                   kilograms_in(engine::make_overview(season, {middle, {}})),
               Catch::WithinRel(planned, 1e-12));
}
