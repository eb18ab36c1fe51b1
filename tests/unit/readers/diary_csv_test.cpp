#include "cropful/readers/diary_csv.hpp"

#include <catch2/catch.hpp>

#include "faults.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::readers;
using Catch::Contains;
using domain::Deed;

namespace {

domain::Farm const& april_farm() {
    static domain::Farm const sample = sample::farm_from(sample::bobwhites());  // one hatch, "April", us
    return sample;
}

std::string const heading = "at,hatch,what,amount,unit,note\r\n";
std::string const whole_heading = "at,hatch,what,amount,unit,note,utc_offset_min\r\n";

std::string rows_fault(std::string const& rows) {
    return sample::fault_of([&] { parse_diary_csv(heading + rows, "x.csv", april_farm()); });
}

domain::Entry noted(std::string const& at, Deed deed, domain::Amount const& amount, std::string const& note = "") {
    return {domain::parse_moment(at), "April", deed, amount, note};
}

}  // namespace

TEST_CASE("a diary as CSV, line by line", "[readers]") {
    domain::Diary const diary{
        noted("2027-04-12T06:00", Deed::found_empty, quantities::kilograms(0)),
        noted("2027-04-12T06:00", Deed::topped_up, quantities::kilograms(5.4431084400000005), "=1+1, \"dry\""),
        noted("2027-04-12T06:00", Deed::thrown_out, quantities::litres(1e-7)),
        noted("2027-04-13", Deed::counted, quantities::birds(214), "two; lines"),
    };
    std::string const text = whole_heading +
                             "2027-04-12T06:00,April,found empty,0,kg,,\r\n"
                             "2027-04-12T06:00,April,topped up,5.4431084400000005,kg,\"=1+1, \"\"dry\"\"\",\r\n"
                             "2027-04-12T06:00,April,thrown out,0.0000001,L,,\r\n"
                             "2027-04-13T00:00,April,counted,214,birds,two; lines,\r\n";
    CHECK(diary_csv(diary) == text);
    CHECK(parse_diary_csv(text, "x.csv", april_farm()) == diary);
}

TEST_CASE("columns stand in any order, and empty rows are passed over", "[readers]") {
    auto const read = parse_diary_csv("unit,note,what,at,amount,hatch\nbirds,so,died,2027-04-12T06:00,2,April\n,,,,,\n",
                                      "x.csv", april_farm());
    REQUIRE(read.size() == 1);
    CHECK(read.front() == noted("2027-04-12T06:00", Deed::died, quantities::birds(2), "so"));
}

// NIST HB 44 App. C: 1 lb = 0.45359237 kg, 1 gal = 3.785411784 L.
TEST_CASE("amounts may be in any unit of weight or volume", "[readers]") {
    auto const amount = [](std::string const& amount_and_unit) {
        std::string const row = "2027-04-12T06:00,April,topped up," + amount_and_unit + ",\n";
        return domain::number(parse_diary_csv(heading + row, "x.csv", april_farm()).at(0).amount);
    };
    CHECK(amount("100,lb") == Approx(45.359237).epsilon(1e-12));
    CHECK(amount("1 1/2,gal") == Approx(1.5 * 3.785411784).epsilon(1e-12));
    CHECK(amount("250,mL") == Approx(0.25).epsilon(1e-12));
    CHECK(amount("0.1,kg") == 0.1);
}

TEST_CASE("seconds are dropped: a diary is kept to the minute", "[readers]") {
    auto const read = parse_diary_csv(heading + "2027-04-12 06:00:59,April,died,1,birds,\n", "x.csv", april_farm());
    CHECK(read.at(0).at == domain::parse_moment("2027-04-12T06:00"));
}

TEST_CASE("a row that is no entry is refused with line and column", "[readers]") {
    CHECK_THAT(rows_fault("2027-02-30,April,died,1,birds,\n"), Contains("x.csv:2: at: found \"2027-02-30\""));
    CHECK_THAT(rows_fault("2027-04-12,april,died,1,birds,\n"),
               Contains("x.csv:2: hatch: found \"april\"; expected a hatch of this farm: April; nearest: April"));
    CHECK_THAT(rows_fault("2027-04-12,April,DIED,1,birds,\n"), Contains("x.csv:2: what: found \"DIED\""));
    CHECK_THAT(rows_fault("2027-04-12,April,died,1,bird,\n"),
               Contains("x.csv:2: unit: found \"bird\"; expected birds"));
    CHECK_THAT(rows_fault("2027-04-12,April,died,-1,birds,\n"), Contains("x.csv:2: amount: found \"-1\""));
    CHECK_THAT(rows_fault("2027-04-12,April,died,1000001,birds,\n"), Contains("from 1 to 1000000"));
    CHECK_THAT(rows_fault("2027-04-12,April,counted,,birds,\n"), Contains("x.csv:2: amount: found \"\""));
    CHECK_THAT(rows_fault("2027-04-12,April,topped up,1,in,\n"), Contains("x.csv:2: unit: found \"in\""));
    CHECK_THAT(rows_fault("2027-04-12,April,topped up,1,,\n"), Contains("x.csv:2: unit: found \"\""));
    CHECK_THAT(rows_fault("2027-04-12,April,topped up,-1,kg,\n"),
               Contains("x.csv:2: amount: found \"-1 kg\" (less than 0)"));
    CHECK_THAT(rows_fault("2027-04-12,April,topped up,1e3,kg,\n"), Contains("without an exponent"));
    CHECK_THAT(rows_fault("2027-04-12,April,part filled,0,kg,\n"),
               Contains("x.csv:2: amount: found \"0\"; expected more"));
    CHECK_THAT(rows_fault("2027-04-12,April,found empty,1,kg,\n"), Contains("expected 0 beside \"found empty\""));
    CHECK_THAT(rows_fault("2027-04-12,April,died,1,birds,\"a\nb\"\n2027-04-12,April,died,x,birds,\n"),
               Contains("x.csv:2: note: found a line end"));
    CHECK(rows_fault("2027-04-12,April,counted,0,birds,\n") == "no fault");
}

TEST_CASE("a row may say what its clock was ahead of UTC", "[readers]") {
    using namespace std::chrono_literals;
    auto const read = [](std::string const& offset) {
        return parse_diary_csv(whole_heading + "2027-11-07T01:10,April,died,1,birds,," + offset + "\r\n", "x.csv",
                               april_farm())
            .at(0);
    };
    CHECK(read("").utc_offset == std::nullopt);
    CHECK(read("-300").utc_offset == -300min);
    CHECK(read("330").utc_offset == 330min);
    CHECK(diary_csv({read("-300")}).find(",birds,,-300\r\n") != std::string::npos);
    for (char const* bad : {"-05:00", "5h", "1081", "-1081", "1.5", "-"}) {
        CHECK_THROWS_WITH(read(bad), Contains("x.csv:2: utc_offset_min: found"));
    }
}

TEST_CASE("a cell holds what a user may write", "[readers]") {
    CHECK_THAT(rows_fault("2027-04-12,April,died,1,birds,\"two\nlines\"\n"),
               Contains("x.csv:2: note: found a line end in"));
    CHECK_THAT(rows_fault("2027-04-12,April,died,1,birds,\x1b[31m\n"), Contains("note: found a control character in"));
    CHECK_THAT(rows_fault("\x1b,April,died,1,birds,\n"), Contains("at: found a control character in \"\\u001b\""));
}

TEST_CASE("a file with semicolons says so", "[readers]") {
    CHECK_THROWS_WITH(
        parse_diary_csv("at;hatch;what;amount;unit;note\n2027-04-12;April;topped up;2,5;kg;\n", "x.csv", april_farm()),
        Contains("x.csv:1: found semicolons between the columns") && Contains("a point in decimals"));
}
