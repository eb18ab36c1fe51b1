#include "cropful/quantities/decimal.hpp"

#include <limits>

#include <catch2/catch.hpp>

using namespace cropful::quantities;

TEST_CASE("a decimal number is the whole of its text", "[quantities][decimal]") {
    REQUIRE(read_decimal("27.5") == 27.5);
    REQUIRE(read_decimal("-3") == -3);
    REQUIRE(read_decimal("2e3") == 2000);
    REQUIRE(read_decimal("0.0") == 0);
    REQUIRE(read_decimal("0e5") == 0);
    for (char const* text : {"", "two", " 2", "2 ", "+2", "2,5", "1.2.3", "0x10", "inf", "nan"}) {
        CAPTURE(text);
        REQUIRE_FALSE(read_decimal(text).has_value());
    }
}

TEST_CASE("a number a double does not hold is none", "[quantities][decimal]") {
    REQUIRE_FALSE(read_decimal("1e400").has_value());
    REQUIRE_FALSE(read_decimal(std::string(400, '9')).has_value());
    REQUIRE_FALSE(read_decimal("1e-400").has_value());
    REQUIRE_FALSE(read_decimal("0." + std::string(400, '0') + "1").has_value());
}

TEST_CASE("fixed decimals are those of the number as it is held", "[quantities][decimal]") {
    REQUIRE(fixed(2.5, 2) == "2.50");
    REQUIRE(fixed(2.5, 0) == "2");       // a tie
    REQUIRE(fixed(3.5, 0) == "4");       // a tie
    REQUIRE(fixed(0.145, 2) == "0.14");  // 0.145 is held as 0.14499...
    REQUIRE(fixed(-0.001, 2) == "0.00");
    REQUIRE(fixed(-1.5, 1) == "-1.5");
    REQUIRE(fixed(1e20, 0) == "100000000000000000000");
}

TEST_CASE("the shortest number reads back as the same", "[quantities][decimal]") {
    REQUIRE(shortest(0.1) == "0.1");
    REQUIRE(shortest(1.0 / 3) == "0.3333333333333333");
    REQUIRE(shortest(27) == "27");
    REQUIRE(shortest(1e20) == "1e+20");
    REQUIRE(shortest_fixed(27) == "27");
    REQUIRE(shortest_fixed(1e20) == "100000000000000000000");
    REQUIRE(shortest_fixed(1.5e-7) == "0.00000015");
    REQUIRE(shortest_fixed(-2e-5) == "-0.00002");
    for (double const x : {0.1, 1.0 / 3, 123456.789, 6.02214076e23, 1.7976931348623157e308, 2.2250738585072014e-308,
                           std::numeric_limits<double>::denorm_min()}) {
        CAPTURE(x);
        REQUIRE(read_decimal(shortest(x)) == x);
        REQUIRE(read_decimal(shortest_fixed(x)) == x);
        REQUIRE(shortest_fixed(x).find('e') == std::string::npos);
    }
}
