// Head counts with a diary, by hand, of bobwhites: deaths so far 5 % at 7 d, 7 % at 14 d, 11 % at 42 d (rations).
#include <catch2/catch.hpp>

#include "cropful/readers/rations.hpp"
#include "engine/flock.hpp"
#include "engine/heads.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using domain::Deed;

namespace {

domain::Entry entry(domain::Farm const& farm, double age, Deed deed, double heads) {
    auto const& hatch = farm.hatches.front();
    return {hatch.date + days(age), hatch.name, deed, birds(heads), ""};
}

/// 240 chicks, 60 to be removed at 56 d.
domain::Farm farm() { return sample::farm_from(sample::bobwhites()); }

double alive(domain::Farm const& farm, double age) {
    auto const& hatch = farm.hatches.front();
    return in_birds(engine::Flock(hatch, readers::RationsReader().kind(hatch.kind)).alive(days(age)));
}

}  // namespace

TEST_CASE("from a count on, survival goes on from it", "[heads]") {
    auto counted = farm();
    engine::record_heads(counted, {entry(counted, 7, Deed::counted, 236)});
    CHECK_THAT(alive(counted, 7), Catch::WithinAbs(236, 1e-9));
    CHECK_THAT(alive(counted, 14), Catch::WithinAbs(236 * 0.93 / 0.95, 1e-9));
    CHECK_THAT(alive(counted, 6.9), Catch::WithinAbs(alive(farm(), 6.9), 1e-9));
}

TEST_CASE("deaths written down are all there were since the last record", "[heads]") {
    auto dead = farm();
    engine::record_heads(dead, {entry(dead, 7, Deed::died, 3), entry(dead, 14, Deed::died, 2)});
    CHECK_THAT(alive(dead, 7), Catch::WithinAbs(237, 1e-9));
    CHECK_THAT(alive(dead, 14), Catch::WithinAbs(235, 1e-9));
    CHECK_THAT(alive(dead, 42), Catch::WithinAbs(235 * 0.89 / 0.93, 1e-9));
}

TEST_CASE("deaths written down after a planned removal are all there were, the table's left out", "[heads]") {
    auto dead = farm();  // 60 leave on day 56: 240 - 60 - 4
    engine::record_heads(dead, {entry(dead, 70, Deed::died, 4)});
    CHECK_THAT(alive(dead, 70), Catch::WithinAbs(176, 1e-9));
    engine::record_heads(dead, {entry(dead, 77, Deed::died, 1)});
    CHECK_THAT(alive(dead, 77), Catch::WithinAbs(175, 1e-9));
}

TEST_CASE("a count on the day of hatch is of the chicks hatched, whatever the hour", "[heads]") {
    auto counted = farm();
    engine::record_heads(counted, {entry(counted, 0.25, Deed::died, 4), entry(counted, 0.3, Deed::counted, 361)});
    CHECK_THAT(alive(counted, 0), Catch::WithinAbs(361, 1e-9));
    CHECK_THAT(alive(counted, 7), Catch::WithinAbs(361 * 0.95, 1e-9));
    auto const& hatch = counted.hatches.front();
    engine::Flock const flock(hatch, readers::RationsReader().kind(hatch.kind));
    CHECK_THAT(in_birds(flock.counted()), Catch::WithinAbs(361, 1e-9));
    auto later = farm();
    engine::record_heads(later, {entry(later, 1.25, Deed::counted, 361)});
    CHECK_THAT(alive(later, 0), Catch::WithinAbs(240, 1e-9));
}

TEST_CASE("what a move is taken for is said", "[heads]") {
    auto most = farm(), few = farm(), far = farm();
    auto const all = engine::record_heads(most, {entry(most, 60, Deed::moved_out, 50)});
    REQUIRE(all.size() == 1);
    CHECK(all[0].hatches == std::vector<std::string>{"April"});
    CHECK(all[0].with == domain::Arguments{{"form", "taken whole"},
                                           {"moved", birds(50)},
                                           {"day", farm().hatches.front().date + days(60)},
                                           {"planned", birds(60)},
                                           {"planned_day", farm().hatches.front().date + days(56)}});
    auto const part = engine::record_heads(few, {entry(few, 60, Deed::moved_out, 10)});
    REQUIRE(part.size() == 1);
    CHECK(part[0].with.at("form") == domain::Argument("taken part"));
    CHECK(part[0].with.at("left") == domain::Argument(birds(50)));
    CHECK(engine::record_heads(far, {entry(far, 42, Deed::moved_out, 58)}).empty());
}

TEST_CASE("birds moved leave or join those alive then", "[heads]") {
    auto moved = farm();
    engine::record_heads(moved, {entry(moved, 7, Deed::moved_out, 28), entry(moved, 14, Deed::moved_in, 10)});
    CHECK_THAT(alive(moved, 7), Catch::WithinAbs(240 * 0.95 - 28, 1e-9));
    CHECK_THAT(alive(moved, 14), Catch::WithinAbs(200 * 0.93 / 0.95 + 10, 1e-9));
}

TEST_CASE("a hatch last counted as none is over, until birds join it", "[heads]") {
    auto over = farm();
    engine::record_heads(over, {entry(over, 30, Deed::counted, 0)});
    CHECK(over.hatches.front().until == days(30));
    auto joined = farm();
    engine::record_heads(joined, {entry(joined, 30, Deed::counted, 0), entry(joined, 31, Deed::moved_in, 9)});
    CHECK(joined.hatches.front().until == farm().hatches.front().until);
    CHECK_THAT(alive(joined, 31), Catch::WithinAbs(9, 1e-9));
}

TEST_CASE("birds moved within a week of a planned removal are part of it", "[heads]") {
    auto most = farm(), few = farm(), far = farm();
    engine::record_heads(most, {entry(most, 60, Deed::moved_out, 50)});  // 60 were planned on day 56
    engine::record_heads(few, {entry(few, 60, Deed::moved_out, 10)});
    engine::record_heads(far, {entry(far, 42, Deed::moved_out, 58)});
    CHECK(most.hatches.front().removed.empty());
    CHECK_THAT(in_birds(few.hatches.front().removed.front().birds), Catch::WithinAbs(50, 1e-9));
    CHECK_THAT(in_birds(far.hatches.front().removed.front().birds), Catch::WithinAbs(60, 1e-9));
    CHECK_THAT(alive(most, 56), Catch::WithinAbs(alive(most, 55.999999), 1e-3));
    CHECK_THAT(alive(far, 56), Catch::WithinAbs(alive(far, 55.999999) - 60, 1e-3));
}

TEST_CASE("entries from before the hatch, or after the day past its end, are left out", "[heads]") {
    auto const some = farm();  // kept to 112 d
    auto const kept =
        engine::in_their_time(some, {entry(some, -1, Deed::counted, 5), entry(some, 0, Deed::counted, 240),
                                     entry(some, 112.2, Deed::died, 1), entry(some, 114, Deed::died, 1)});
    CHECK(kept.size() == 2);
}

TEST_CASE("records and planned removals are taken in order of age", "[heads]") {
    auto both = farm();
    engine::record_heads(both, {entry(both, 42, Deed::counted, 200), entry(both, 70, Deed::counted, 137)});
    CHECK_THAT(alive(both, 42), Catch::WithinAbs(200, 1e-9));
    CHECK_THAT(alive(both, 56) + 60, Catch::WithinAbs(alive(both, 55.999999), 1e-3));
    CHECK_THAT(alive(both, 70), Catch::WithinAbs(137, 1e-9));
}

TEST_CASE("more recorded dead than there were leaves none, not fewer", "[heads]") {
    auto none = farm();
    engine::record_heads(none, {entry(none, 7, Deed::died, 500)});
    CHECK(alive(none, 10) == 0);
}

TEST_CASE("other hatches' entries, and feed, say nothing of heads", "[heads]") {
    auto same = farm();
    auto other = entry(same, 7, Deed::counted, 5);
    other.hatch = "another";
    auto fed = entry(same, 7, Deed::topped_up, 5);
    fed.amount = kilograms(5);
    engine::record_heads(same, {other, fed});
    CHECK(same.hatches.front().heads.empty());
}
