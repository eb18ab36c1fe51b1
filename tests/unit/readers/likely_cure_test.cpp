#include "readers/likely_cure.hpp"

#include <catch2/catch.hpp>

#include "cropful/fault.hpp"
#include "faults.hpp"
#include "readers/document.hpp"

using namespace cropful::readers;
using Catch::Contains;

TEST_CASE("dates in other orders and dates that do not exist are known", "[readers]") {
    for (auto const* line : {"date = 5/4/2027", "date=05.04.27", "date =\t5-04-2027", "date = 2027-02-30",
                             "date = 2027/4/5", "a = 1, date = 5/4/2027", "date = 2027.4.5"}) {
        CHECK_THAT(likely_cure(line), Contains("as year-month-day"));
    }
    for (auto const* line : {"date = 5/4", "date = 527-04-05", "date = 5/400/2027", "date 5/4/2027",
                             "date = a 5/4/2027", "date = 5/4/7"}) {
        CHECK(likely_cure(line).empty());
    }
}

TEST_CASE("decimal commas and quotes are known", "[readers]") {
    CHECK_THAT(likely_cure("price = 27,50"), Contains("27.50"));
    CHECK(likely_cure("price = 27,").empty());
    CHECK(likely_cure("price = ,5").empty());
    CHECK_THAT(likely_cure("bag = \u201C50 lb\u201D"), Contains("straight quotes"));
    CHECK_THAT(likely_cure("bag = \"50 lb"), Contains("closing quote"));
    CHECK(likely_cure("bag = \"50 lb\"").empty());
}

TEST_CASE("a line of any length is gone through", "[readers]") {
    for (char const c : {' ', '1', '=', '.', '-'}) CHECK(likely_cure("a=" + std::string(900'000, c) + '@').empty());
    std::string const blanks(40'000, ' ');
    CHECK_THAT(cropful::sample::fault_of([&] { parse_document("a=" + blanks + "@", "x.toml"); }),
               Contains("x.toml:1: found something that is not TOML"));
}
