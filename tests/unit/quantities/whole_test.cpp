#include "cropful/quantities/whole.hpp"

#include <catch2/catch.hpp>

using namespace cropful;
using quantities::whole_number;

TEST_CASE("what a type holds is cut off behind the point", "[quantities]") {
    CHECK(whole_number(2.999) == 2);
    CHECK(whole_number(-2.999) == -2);
    CHECK(whole_number(2147483647.5) == 2147483647);
    CHECK(whole_number(-2147483648.0) == -2147483648);
    CHECK(whole_number<unsigned>(4294967295.9) == 4294967295U);
    CHECK(whole_number<unsigned>(-0.5) == 0U);
    CHECK(whole_number<long long>(9007199254740993.0) == 9007199254740992);  // 2^53 + 1 is no double
    CHECK(whole_number<std::size_t>(1e18) == 1'000'000'000'000'000'000U);
}

TEST_CASE("what it does not hold is refused", "[quantities]") {
    double const infinite = std::numeric_limits<double>::infinity();
    double const none = std::numeric_limits<double>::quiet_NaN();
    for (double const x : {2147483648.0, -2147483649.0, 1e300, -1e300, infinite, -infinite, none}) {
        CHECK_THROWS_AS(whole_number(x), NoAnswer);
    }
    for (double const x : {-1.0, 4294967296.0, infinite, none}) CHECK_THROWS_AS(whole_number<unsigned>(x), NoAnswer);
    for (double const x : {9.3e18, -9.3e18, none}) CHECK_THROWS_AS(whole_number<long long>(x), NoAnswer);
    CHECK_THROWS_WITH(whole_number(1e10),
                      "a count of the answer is too large to be written; check the sizes and numbers asked for");
}
