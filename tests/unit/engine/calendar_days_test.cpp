// Days of the calendar that a stretch of a hatch's life lies on.
#include "engine/calendar_days.hpp"

#include <catch2/catch.hpp>

#include "cropful/engine/buying.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::engine;
using namespace std::chrono_literals;
using Catch::WithinAbs;
using std::chrono::February;
using std::chrono::January;
using std::chrono::sys_days;

namespace {

domain::Hatch hatched(char const* moment) {
    auto hatch = sample::farm_from(sample::bobwhites()).hatches.front();
    hatch.date = domain::parse_moment(moment);
    return hatch;
}

/// A season of one bagged feed.
std::string season(std::string const& date, std::string const& until) {
    return "[farm]\nname = \"x\"\n[feed.a]\nprotein = \"24 %\"\nbag = \"50 lb\"\nprice = 20\n[[hatch]]\n"
           "kind = \"bobwhite\"\nchicks = 90\nfeeding = [{ feed = \"a\", from = \"0 d\" }]\ndate = " +
           date + "\nuntil = \"" + until + "\"\n";
}

}  // namespace

TEST_CASE("a day begins at midnight, whatever the hour of the hatch", "[days]") {
    auto const all = calendar_days(hatched("2027-01-05T18:00"), days(0), days(2));
    REQUIRE(all.size() == 3);
    CHECK(all[0].day == sys_days(2027y / January / 5));
    CHECK(all[2].day == sys_days(2027y / January / 7));
    CHECK_THAT(in_days(all[0].to), WithinAbs(0.25, 1e-9));
    CHECK_THAT(in_days(all[1].to), WithinAbs(1.25, 1e-9));
    CHECK(in_days(all[2].to) == 2);
    for (std::size_t i = 1; i < all.size(); ++i) CHECK(all[i].from == all[i - 1].to);
}

TEST_CASE("an end at midnight belongs to the day before, as far as it can be told", "[days]") {
    auto const at_midnight = hatched("2027-01-05");
    for (int minute = 1; minute < 1440; ++minute) {
        domain::Hatch hatch = at_midnight;
        hatch.date = hatch.date + days(minute / 1440.0);
        // 42 days to the minute, by the sum of a file: so many hours and minutes
        double const until = (42 * 1440.0 - minute) / 60 * (1 / 24.0);
        CHECK(calendar_days(hatch, days(0), days(until)).size() == 42);
        CHECK(calendar_days(hatch, days(0), days(until + 1 / 1440.0)).size() == 43);
        CHECK(calendar_days(hatch, days(until), days(until + 1e-3)).size() == 1);
    }
}

TEST_CASE("a stretch of no length lies on one day", "[days]") {
    CHECK(calendar_days(hatched("2027-01-05"), days(3), days(3)).size() == 1);
    CHECK(calendar_days(hatched("2027-01-05"), days(3), days(3 + 1e-12)).size() == 1);
}

TEST_CASE("a shopping has as many days as its season, to the minute", "[days][trips]") {
    // 5 January 16:00 and 992 h, 00:02 and 60,478 min, or the first chore's 07:00 and 1,001 h, end on 16 February at
    // 00:00: 42 days
    for (auto const& text : {season("2027-01-05T16:00:00", "992 h"), season("2027-01-05T00:02:00", "60478 min"),
                             season("2027-01-05", "1001 h")}) {
        auto const plan = sample::plan_of(text);
        auto const trips = plan_trips(plan);
        CHECK(trips.buying.trips.size() == 42);
        CHECK(trips.date(42).iso() == "2027-02-16T00:00");
        Mass sum = kilograms(0);
        for (Mass const& need : trips.buying.feeds.at(0).needs) sum += need;
        CHECK_THAT(in_kilograms(sum), WithinAbs(in_kilograms(plan.feeds.at(0).band.p95), 1e-9));
        CHECK(plan.hatches.at(0).days.size() == 42);
    }
}
