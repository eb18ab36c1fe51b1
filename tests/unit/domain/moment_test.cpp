#include "cropful/domain/moment.hpp"

#include <catch2/catch.hpp>

#include "faults.hpp"

using namespace cropful;
using namespace cropful::domain;
using quantities::days;

namespace {

std::string moment_fault(std::string_view text) {
    return sample::fault_of([&] { parse_moment(text); });
}

}  // namespace

TEST_CASE("a date alone is its midnight", "[domain]") {
    CHECK(parse_moment("2027-04-05").iso() == "2027-04-05T00:00");
    CHECK(parse_moment("2027-04-05").iso_date() == "2027-04-05");
    CHECK(parse_moment("2027-04-05") == parse_moment("2027-04-05T00:00:00"));
    CHECK(parse_moment("2027-04-05 14:30").iso() == "2027-04-05T14:30");
    CHECK(parse_moment("2027-04-05T14:30:59").iso() == "2027-04-05T14:30");
}

TEST_CASE("weekdays and months by the calendar", "[domain]") {
    // Known days: 1 Jan 2000 was a Saturday, 29 Feb 2000 a Tuesday, 1 Jan 2024 a Monday; 8 Apr 2027 is a Thursday.
    CHECK(parse_moment("2000-01-01").day_year() == "Sat 1 Jan 2000");
    CHECK(parse_moment("2000-02-29").day() == "Tue 29 Feb");
    CHECK(parse_moment("2024-01-01").day() == "Mon 1 Jan");
    CHECK(parse_moment("2027-04-08T23:59").day_year() == "Thu 8 Apr 2027");
    CHECK(parse_moment("2199-12-31").day() == "Tue 31 Dec");
}

TEST_CASE("moments and durations add up", "[domain]") {
    Moment const hatch = parse_moment("2027-04-05");
    CHECK((hatch + days(3)).iso_date() == "2027-04-08");
    CHECK((hatch + days(26)).iso_date() == "2027-05-01");
    CHECK(quantities::in_days(parse_moment("2028-03-01") - parse_moment("2028-02-28")) == 2);  // a leap year
    CHECK(quantities::in_days(parse_moment("2100-03-01") - parse_moment("2100-02-28")) == 1);  // none
    CHECK(quantities::in_days(parse_moment("2027-04-06T12:00") - hatch) == 1.5);
    CHECK(hatch < hatch + days(0.001));
    CHECK(Moment(hatch.date(), days(0.5)).iso() == "2027-04-05T12:00");
}

TEST_CASE("every exact minute of a day prints as itself", "[domain]") {
    Moment const last = parse_moment("2199-06-30");
    for (int minute = 0; minute < 1440; ++minute) {
        std::string const h = std::to_string(100 + minute / 60).substr(1);
        std::string const m = std::to_string(100 + minute % 60).substr(1);
        REQUIRE((last + days(minute / 1440.0)).iso() == "2199-06-30T" + h + ':' + m);
        REQUIRE(parse_moment("2199-06-30T" + h + ':' + m).iso() == "2199-06-30T" + h + ':' + m);
    }
    double const second = 1.0 / 86400;
    CHECK((last + days(1 - second)).iso() == "2199-06-30T23:59");
    CHECK((last + days(1 - 1e-10)).iso() == "2199-07-01T00:00");
}

TEST_CASE("the hour just past", "[domain]") {
    auto const about = [](char const* time, bool twelve) {
        return parse_moment(std::string("2027-04-08T") + time).about_hour(twelve);
    };
    CHECK(about("00:00", true) == "about midnight");
    CHECK(about("00:59", true) == "about midnight");
    CHECK(about("01:00", true) == "about 1 am");
    CHECK(about("11:59", true) == "about 11 am");
    CHECK(about("12:00", true) == "about noon");
    CHECK(about("15:59", true) == "about 3 pm");
    CHECK(about("23:30", true) == "about 11 pm");
    CHECK(about("15:59", false) == "about 15:00");
    CHECK(about("00:10", false) == "about 00:00");
    CHECK(about("09:10", false) == "about 09:00");
}

TEST_CASE("a date that is none is refused", "[domain]") {
    CHECK(moment_fault("2027-02-30") ==
          "found \"2027-02-30\" (there is no such day); expected a date such as \"2027-04-05\" or "
          "\"2027-04-05T14:30\"");
    auto const [text, reason] = GENERATE(table<std::string, std::string>({
        {"2027-02-29", "there is no such day"},
        {"2100-02-29", "there is no such day"},
        {"2027-13-01", "there is no such day"},
        {"2027-00-10", "there is no such day"},
        {"2027-04-00", "there is no such day"},
        {"1999-12-31", "years 2000 to 2199 only"},
        {"2200-01-01", "years 2000 to 2199 only"},
        {"0000-01-01", "years 2000 to 2199 only"},
        {"2027-04-05T24:00", "there is no such time of day"},
        {"2027-04-05T12:60", "there is no such time of day"},
        {"2027-04-05T12:30:60", "there is no such time of day"},
        {"", "found \"\"; expected a date"},
        {"2027", "expected a date"},
        {"2027-4-5", "expected a date"},
        {"05/04/2027", "expected a date"},
        {"2027/04/05", "expected a date"},
        {"20270405", "expected a date"},
        {"-027-04-05", "expected a date"},
        {"+027-04-05", "expected a date"},
        {"2027-04-05T", "expected a date"},
        {"2027-04-05T1", "expected a date"},
        {"2027-04-05T1:30", "expected a date"},
        {"2027-04-05X12:30", "expected a date"},
        {"2027-04-05T12.30", "expected a date"},
        {"2027-04-05T12:30Z", "expected a date"},
        {"2027-04-05T12:30:1", "expected a date"},
        {"2027-04-05T12:30:00+02:00", "expected a date"},
        {"2027-04-05 ", "expected a date"},
        {" 2027-04-05", "expected a date"},
    }));
    CAPTURE(text);
    CHECK_THAT(moment_fault(text), Catch::Contains(reason));
}
