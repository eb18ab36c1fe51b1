#include "cropful/reports/words.hpp"

#include <catch2/catch.hpp>

using namespace cropful::reports;

TEST_CASE("counting and joining words", "[reports][words]") {
    REQUIRE(plural(1, "bag") == "1 bag");
    REQUIRE(plural(0, "bag") == "0 bags");
    REQUIRE(plural(12, "bag") == "12 bags");
    REQUIRE(plural(2, "hatch") == "2 hatches");
    REQUIRE(join({"a", "b", "c"}) == "a, b, c");
    REQUIRE(join({}).empty());
}
