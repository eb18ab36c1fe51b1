#include "cropful/store/zone.hpp"

#include <catch2/catch.hpp>

#include "in_zone.hpp"

using namespace cropful;
using namespace std::chrono_literals;

namespace {

std::chrono::minutes offset(std::string const& zone, char const* at) {
    sample::InZone const here(zone);
    return store::local_offset(domain::parse_moment(at));
}

}  // namespace

// The IANA time zone database; the rules of the United States by the Energy Policy Act of 2005, section 110, those of
// Ireland (whose winter is the time that is "saved") by the Standard Time (Amendment) Act 1971.
TEST_CASE("how far a clock is ahead of UTC", "[readers]") {
    CHECK(offset("UTC", "2027-04-12T06:00") == 0min);
    CHECK(offset("Asia/Kolkata", "2027-04-12T06:00") == 330min);
    CHECK(offset("America/New_York", "2027-01-12T06:00") == -300min);
    CHECK(offset("America/New_York", "2027-07-12T06:00") == -240min);
    CHECK(offset("Europe/Dublin", "2027-01-12T06:00") == 0min);
    CHECK(offset("Europe/Dublin", "2027-07-12T06:00") == 60min);
}

TEST_CASE("the hour a clock shows twice is the first of the two, the one it leaves out as before", "[readers]") {
    CHECK(offset("America/New_York", "2027-11-07T00:59") == -240min);
    CHECK(offset("America/New_York", "2027-11-07T01:00") == -240min);
    CHECK(offset("America/New_York", "2027-11-07T01:59") == -240min);
    CHECK(offset("America/New_York", "2027-11-07T02:00") == -300min);
    CHECK(offset("America/New_York", "2027-03-14T01:59") == -300min);
    CHECK(offset("America/New_York", "2027-03-14T02:30") == -300min);
    CHECK(offset("America/New_York", "2027-03-14T03:00") == -240min);
    CHECK(offset("Europe/Dublin", "2027-10-31T01:30") == 60min);
    CHECK(offset("Europe/Dublin", "2027-10-31T02:00") == 0min);
    CHECK(offset("Australia/Lord_Howe", "2027-04-04T01:45") == 660min);  // half an hour, from 02:00 to 01:30
}
