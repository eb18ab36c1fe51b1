#include "cropful/domain/diary.hpp"

#include <catch2/catch.hpp>

#include "cropful/domain/words.hpp"
#include "cropful/fault.hpp"

using namespace cropful;
using namespace cropful::domain;
using Catch::Contains;
using quantities::Measures;

namespace {

template <class Act>
std::string refusal(Act const& act) {
    try {
        act();
    } catch (BadInput const& fault) {
        return fault.what();
    }
    return "accepted";
}

}  // namespace

TEST_CASE("a deed is read back by its name", "[domain]") {
    for (Deed const deed : {Deed::topped_up, Deed::part_filled, Deed::thrown_out, Deed::found_empty, Deed::died,
                            Deed::counted, Deed::moved_out, Deed::moved_in}) {
        CHECK(parse_deed(name(deed)) == deed);
    }
    CHECK(name(Deed::topped_up) == "topped up");
    CHECK(name(Deed::moved_in) == "moved in");
    CHECK_THAT(refusal([] { parse_deed("Died"); }),
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
    CHECK_THAT(refusal([] { amount_in("lb", 1); }), Contains("found \"lb\"; expected kg, L or birds"));
}

// NIST HB 44 App. C: 1 lb = 0.45359237 kg, 1 gal = 3.785411784 L; the imperial gallon is 4.54609 L by law (1985).
TEST_CASE("an amount of feed or water by its unit", "[domain]") {
    CHECK(parse_feed_or_water("2 lb", Measures::us) == Amount(quantities::kilograms(0.90718474)));
    CHECK(parse_feed_or_water("2 gal", Measures::us) == Amount(quantities::litres(7.570823568)));
    CHECK(parse_feed_or_water("1 imp gal", Measures::uk) == Amount(quantities::litres(4.54609)));
    CHECK_THAT(refusal([] { parse_feed_or_water("2 d", Measures::us); }), Contains("such as \"1 gal\""));
    CHECK_THAT(refusal([] { parse_feed_or_water("2 gal", Measures::uk); }), Contains("\"1 imp gal\" or \"1 US gal\""));
}

// RFC 3629, section 4 (the grammar) and 10 (overlong forms); the Unicode Standard, table 3-7.
TEST_CASE("notes are UTF-8", "[domain]") {
    CHECK(parse_note("=1+1, \"so\"\n") == "=1+1, \"so\"\n");
    for (char const* sound : {"", "a", "\xC2\xA2", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xEF\xBF\xBD", "\xF0\x90\x80\x80",
                              "\xF4\x8F\xBF\xBF"}) {
        CHECK(is_utf8(sound));
    }
    for (char const* bad : {"\x80", "\xC3", "\xC0\xAF", "\xC1\x81", "\xE0\x9F\xBF", "\xE2\x82", "\xED\xA0\x80",
                            "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xE2\x28\xA1", "a\xFF"}) {
        INFO(bad);
        CHECK_FALSE(is_utf8(bad));
    }
    CHECK_THAT(refusal([] { parse_note("caf\xE9"); }), Contains("expected a note in letters of UTF-8"));
}
