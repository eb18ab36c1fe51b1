// Prices by weight: pounds as NIST Handbook 44 has them, the divisions by hand.
#include <catch2/catch.hpp>

#include "cropful/fault.hpp"
#include "cropful/quantities/text.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::Contains;
using Catch::WithinRel;

TEST_CASE("a price by weight", "[price]") {
    constexpr double pound = 0.45359237;
    auto const [text, per_kilogram] = GENERATE(table<char const*, double>({
        {"310 per tonne", 0.31},
        {"14.50 per 50 lb", 14.5 / 50 / pound},
        {"0.35/lb", 0.35 / pound},
        {"18 per cwt", 18 / (100 * pound)},
        {"360 per short ton", 360 / (2000 * pound)},
        {"0.35 / lb", 0.35 / pound},
        {"9 1/2 per 25 kg", 0.38},
        {"0 per kg", 0},
        {"10/50 lb", 10 / (50 * 0.45359237)},
    }));
    INFO(text);
    CHECK_THAT(in_money_per_kilogram(parse_price(text)), WithinRel(per_kilogram, 1e-12));
}

TEST_CASE("what is no price by weight is refused", "[price]") {
    auto const [text, words] = GENERATE(table<char const*, char const*>({
        {"310", "per what weight is missing"},
        {"310 USD per tonne", "no unit of money is wanted"},
        {"310 per ton", "a ton is several weights"},
        {"3 per gal", "gal is a volume"},
        {"3 per 0 lb", "one weight more than none"},
        {"3 per lb per day", "one weight more than none"},
        {"-3 per lb", "-3 per lb"},
        {"99999999 per lb", "at most 100000 per kg"},
    }));
    INFO(text);
    CHECK_THROWS_WITH(parse_price(text), Contains(words));
}
