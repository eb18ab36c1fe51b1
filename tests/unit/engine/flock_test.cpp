// Head counts by hand. Bobwhite deaths since the hatch: 5 % by 7 d, 7 % by 14 d, 11 % by 42 d, 15 % by 112 d and later
// (rations/birds/bobwhite.toml).
#include "engine/flock.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "cropful/fault.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

domain::Hatch hatch_of(double chicks, std::vector<domain::Removal> removed = {}) {
    auto hatch = sample::farm_from(sample::bobwhites()).hatches.front();
    hatch.chicks = birds(chicks);
    hatch.removed = std::move(removed);
    return hatch;
}

engine::Flock flock_of(domain::Hatch const& hatch) {
    return engine::Flock(hatch, readers::RationsReader().kind("bobwhite"));
}

double alive(engine::Flock const& flock, double age) { return in_birds(flock.alive(days(age))); }

}  // namespace

TEST_CASE("a flock without removals: chicks times survival", "[flock]") {
    auto const flock = flock_of(hatch_of(240));
    CHECK(in_birds(flock.counted()) == 240);
    CHECK(alive(flock, 0) == 240);
    CHECK_THAT(alive(flock, 7), Catch::WithinRel(228.0, 1e-12));    // 240 x 0.95
    CHECK_THAT(alive(flock, 14), Catch::WithinRel(223.2, 1e-12));   // 240 x 0.93
    CHECK_THAT(alive(flock, 42), Catch::WithinRel(213.6, 1e-12));   // 240 x 0.89
    CHECK_THAT(alive(flock, 112), Catch::WithinRel(204.0, 1e-12));  // 240 x 0.85
    CHECK_THAT(alive(flock, 500), Catch::WithinRel(204.0, 1e-12));
}

TEST_CASE("a removal counts from its age on, and survival goes on for the rest", "[flock]") {
    auto const flock = flock_of(hatch_of(240, {{days(42), birds(60)}}));
    CHECK_THAT(alive(flock, 42), Catch::WithinRel(153.6, 1e-12));  // 213.6 - 60
    CHECK_THAT(alive(flock, 42 - 1e-9), Catch::WithinRel(213.6, 1e-9));
    CHECK_THAT(alive(flock, 112), Catch::WithinRel(153.6 * 0.85 / 0.89, 1e-12));
}

TEST_CASE("several removals, two of them at one age", "[flock]") {
    auto const flock = flock_of(hatch_of(240, {{days(14), birds(23.2)}, {days(42), birds(60)}, {days(42), birds(30)}}));
    double const month = 200 * 0.89 / 0.93;  // 223.2 - 23.2 at 14 d
    CHECK_THAT(alive(flock, 14), Catch::WithinRel(200.0, 1e-12));
    CHECK_THAT(alive(flock, 42), Catch::WithinRel(month - 90, 1e-12));
    CHECK_THAT(alive(flock, 112), Catch::WithinRel((month - 90) * 0.85 / 0.89, 1e-12));
}

TEST_CASE("birds counted later: 100 at 42 d are 100 then", "[flock]") {
    auto hatch = hatch_of(100, {{days(14), birds(50)}});  // gone before the count
    hatch.first_age = days(42);
    auto const flock = flock_of(hatch);
    CHECK_THAT(alive(flock, 42), Catch::WithinRel(100.0, 1e-12));
    CHECK_THAT(alive(flock, 112), Catch::WithinRel(100 * 0.85 / 0.89, 1e-12));
    CHECK_THAT(alive(flock, 10), Catch::WithinRel(100.0, 1e-12));
}

TEST_CASE("birds removed at the age at which they are counted are counted first", "[flock]") {
    auto hatch = hatch_of(100, {{days(42), birds(10)}});
    hatch.first_age = days(42);
    auto const flock = flock_of(hatch);
    CHECK(in_birds(flock.counted()) == 100);
    CHECK_THAT(alive(flock, 42), Catch::WithinRel(90.0, 1e-12));
    CHECK_THAT(alive(flock, 112), Catch::WithinRel(90 * 0.85 / 0.89, 1e-12));
}

TEST_CASE("eggs set hatch at the farm's rate, else the kind's", "[flock]") {
    auto hatch = hatch_of(0);
    hatch.chicks.reset();
    hatch.eggs = 320;
    CHECK_THAT(in_birds(flock_of(hatch).counted()), Catch::WithinRel(208.0, 1e-12));  // 65 %
    hatch.hatch_rate = 0.75;
    CHECK_THAT(in_birds(flock_of(hatch).counted()), Catch::WithinRel(240.0, 1e-12));
    CHECK_THAT(alive(flock_of(hatch), 7), Catch::WithinRel(228.0, 1e-12));
}

TEST_CASE("every bird may go, but not one more", "[flock]") {
    CHECK(alive(flock_of(hatch_of(240, {{days(0), birds(240)}})), 50) == 0);
    CHECK_THROWS_AS(flock_of(hatch_of(240, {{days(0), birds(241)}})), NoAnswer);
    CHECK_THROWS_AS(flock_of(hatch_of(240, {{days(42), birds(120)}, {days(42), birds(94)}})), NoAnswer);  // of 213.6
}

TEST_CASE("a hatch rate nobody stated moves with its score, never above all eggs", "[flock]") {
    auto const kind = readers::RationsReader().kind("bobwhite");
    auto const& rate = kind.hatch_rate;
    domain::Hatch hatch = sample::farm_from(sample::bobwhites()).hatches.front();
    hatch.chicks.reset();
    hatch.eggs = 320;
    // half the distance from the 5 % to the 95 % point of a normal law is 1.6448536 standard deviations
    double const high = rate.value * std::sqrt(rate.high / rate.low);
    CHECK_THAT(in_birds(engine::chicks(hatch, kind, 1.6448536269514722)), Catch::WithinRel(320 * high, 1e-9));
    CHECK_THAT(in_birds(engine::chicks(hatch, kind, 9)), Catch::WithinRel(320.0, 1e-12));
    hatch.hatch_rate = 0.75;
    CHECK_THAT(in_birds(engine::chicks(hatch, kind, 2)), Catch::WithinRel(240.0, 1e-12));
}
