#include "cropful/domain/diary.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "cropful/domain/words.hpp"
#include "faults.hpp"

using namespace cropful;
using namespace cropful::domain;
using Catch::Contains;
using quantities::Measures;
using sample::fault_of;

TEST_CASE("a deed is read back by its name", "[domain]") {
    for (Deed const deed : {Deed::topped_up, Deed::part_filled, Deed::thrown_out, Deed::found_empty, Deed::died,
                            Deed::counted, Deed::moved_out, Deed::moved_in}) {
        CHECK(parse_deed(name(deed)) == deed);
    }
    CHECK(name(Deed::topped_up) == "topped up");
    CHECK(name(Deed::moved_in) == "moved in");
    CHECK_THAT(fault_of([] { parse_deed("Died"); }),
               Contains("found \"Died\"; expected one of: topped up, part filled"));
}

TEST_CASE("deeds count birds or are about feed and water", "[domain]") {
    CHECK(counts_birds(Deed::died));
    CHECK(counts_birds(Deed::counted));
    CHECK(counts_birds(Deed::moved_out));
    CHECK(counts_birds(Deed::moved_in));
    CHECK_FALSE(counts_birds(Deed::topped_up));
    CHECK_FALSE(counts_birds(Deed::found_empty));
}

TEST_CASE("an amount is kept in kg, L or birds", "[domain]") {
    CHECK(unit(quantities::kilograms(2.5)) == "kg");
    CHECK(unit(quantities::litres(0)) == "L");
    CHECK(unit(quantities::birds(3)) == "birds");
    CHECK(number(quantities::litres(7.570823568)) == 7.570823568);
    CHECK(amount_in("kg", 2.5) == Amount(quantities::kilograms(2.5)));
    CHECK(amount_in("L", 2.5) == Amount(quantities::litres(2.5)));
    CHECK(amount_in("birds", 3) == Amount(quantities::birds(3)));
    CHECK_THAT(fault_of([] { amount_in("lb", 1); }), Contains("found \"lb\"; expected kg, L or birds"));
}

// NIST HB 44 App. C: 1 lb = 0.45359237 kg, 1 gal = 3.785411784 L; the imperial gallon is 4.54609 L by law (1985).
TEST_CASE("an amount of feed or water by its unit", "[domain]") {
    CHECK(parse_feed_or_water("2 lb", Measures::us) == Amount(quantities::kilograms(0.90718474)));
    CHECK(parse_feed_or_water("2 gal", Measures::us) == Amount(quantities::litres(7.570823568)));
    CHECK(parse_feed_or_water("1 imp gal", Measures::uk) == Amount(quantities::litres(4.54609)));
    CHECK_THAT(fault_of([] { parse_feed_or_water("2 d", Measures::us); }), Contains("such as \"1 gal\""));
    CHECK_THAT(fault_of([] { parse_feed_or_water("2 gal", Measures::uk); }), Contains("\"1 imp gal\" or \"1 US gal\""));
}

TEST_CASE("an amount must be one of its deed", "[domain]") {
    auto const refused = [](Deed deed, Amount const& amount) {
        return fault_of([&] { check_amount({parse_moment("2027-04-12"), "April", deed, amount, ""}); });
    };
    double const infinite = std::numeric_limits<double>::infinity();
    CHECK_THAT(refused(Deed::topped_up, quantities::kilograms(-5)), Contains("found -5 kg beside \"topped up\""));
    CHECK_THAT(refused(Deed::topped_up, quantities::litres(infinite)), Contains("from 0 to 1000000"));
    CHECK_THAT(refused(Deed::topped_up, quantities::litres(std::nan(""))), Contains("from 0 to 1000000"));
    CHECK_THAT(refused(Deed::topped_up, quantities::litres(1000000.1)), Contains("from 0 to 1000000"));
    CHECK_THAT(refused(Deed::died, quantities::kilograms(5)), Contains("expected birds"));
    CHECK_THAT(refused(Deed::topped_up, quantities::birds(5)), Contains("expected kg or L"));
    CHECK_THAT(refused(Deed::counted, quantities::birds(5.5)), Contains("a whole number of birds"));
    CHECK_THAT(refused(Deed::found_empty, quantities::kilograms(5)), Contains("expected 0"));
    CHECK_NOTHROW(check_amount({parse_moment("2027-04-12"), "April", Deed::counted, quantities::birds(0), ""}));
    CHECK_NOTHROW(check_amount({parse_moment("2027-04-12"), "April", Deed::topped_up, quantities::litres(1e6), ""}));
}

TEST_CASE("a moment may be typed with its clock's distance from UTC", "[domain]") {
    using namespace std::chrono_literals;
    CHECK(parse_stamp("2027-11-07T01:30").utc_offset == std::nullopt);
    CHECK(parse_stamp("2027-11-07T01:30-05:00").utc_offset == -300min);
    CHECK(parse_stamp("2027-11-07T01:30-05:00").at == parse_moment("2027-11-07T01:30"));
    CHECK(parse_stamp("2027-11-07 01:30:00+05:30").utc_offset == 330min);
    CHECK(parse_stamp("2027-11-07T01:30+18:00").utc_offset == 1080min);
    for (char const* bad : {"2027-11-07T01:30+18:01", "2027-11-07T01:30-05:60", "2027-11-07T01:30-5:00",
                            "2027-11-07T01:30Z", "2027-11-07-05:00", "2027-11-07T01:30- 5:00"}) {
        INFO(bad);
        CHECK(fault_of([&] { parse_stamp(bad); }) != "no fault");
    }
}

// New York, 7 November 2027: at 02:00 the clock goes back to 01:00, from 4 h behind UTC to 5 h (Energy Policy Act
// 2005).
TEST_CASE("the hour a clock shows twice is in the order it was", "[domain]") {
    using namespace std::chrono_literals;
    auto const at = [](char const* clock, std::chrono::minutes offset) {
        return Entry{parse_moment(clock), "April", Deed::died, quantities::birds(1), clock, offset};
    };
    Diary diary{at("2027-11-07T01:10", -300min), at("2027-11-07T01:50", -240min), at("2027-11-07T02:05", -300min),
                at("2027-11-07T00:59", -240min)};
    put_in_order(diary);
    std::vector<std::string> order;
    for (Entry const& entry : diary) order.push_back(entry.note.substr(11));
    CHECK(order == std::vector<std::string>{"00:59", "01:50", "01:10", "02:05"});
    CHECK(utc_minute(at("2000-01-01T01:30", 60min)) == 15778110);
}
