#include "cropful/fault/characters.hpp"

#include <catch2/catch.hpp>

#include "cropful/fault.hpp"

using namespace cropful;
using Catch::Contains;

namespace {

std::string refusal(std::string_view text) {
    try {
        need_writable(text);
    } catch (BadInput const& fault) {
        return fault.what();
    }
    return "";
}

}  // namespace

// RFC 3629, section 4 (the grammar) and 10 (overlong forms); the Unicode Standard, table 3-7.
TEST_CASE("what is UTF-8", "[fault]") {
    for (char const* sound : {"", "a", "\xC2\xA2", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xEF\xBF\xBD", "\xF0\x90\x80\x80",
                              "\xF4\x8F\xBF\xBF"}) {
        CHECK(is_utf8(sound));
        CHECK(is_writable(sound));
    }
    for (char const* bad : {"\x80", "\xC3", "\xC0\xAF", "\xC1\x81", "\xE0\x9F\xBF", "\xE2\x82", "\xED\xA0\x80",
                            "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xE2\x28\xA1", "a\xFF"}) {
        INFO(bad);
        CHECK_FALSE(is_utf8(bad));
        CHECK_FALSE(is_writable(bad));
    }
}

// The Unicode Standard: general category Cc, Zl and Zp; PropList.txt, Bidi_Control.
TEST_CASE("what no user may write, and how it is spelled out", "[fault]") {
    struct Case {
        std::string_view text;
        char const* escaped;
    };
    for (Case const& one :
         {Case{std::string_view("\0", 1), "\\u0000"}, Case{"\x1b[31m", "\\u001b[31m"}, Case{"\t", "\\u0009"},
          Case{"\r\n", "\\u000d\\u000a"}, Case{"\x7f", "\\u007f"}, Case{"\xC2\x80", "\\u0080"},
          Case{"\xC2\x9F", "\\u009f"}, Case{"\xD8\x9C", "\\u061c"}, Case{"\xE2\x80\x8E", "\\u200e"},
          Case{"\xE2\x80\xA8", "\\u2028"}, Case{"\xE2\x80\xA9", "\\u2029"}, Case{"\xE2\x80\xAA", "\\u202a"},
          Case{"\xE2\x80\xAE", "\\u202e"}, Case{"\xE2\x81\xA6", "\\u2066"}, Case{"\xE2\x81\xA9", "\\u2069"},
          Case{"\xFF", "\\xff"}, Case{"\xE2\x82", "\\xe2\\x82"}}) {
        INFO(one.escaped);
        CHECK_FALSE(is_writable(one.text));
        CHECK(escaped(one.text) == one.escaped);
        CHECK_FALSE(refusal(one.text).empty());
    }
    // Their neighbours: NBSP, ZERO WIDTH JOINER (within an emoji), NARROW NBSP, U+2065 and U+206A, and other letters.
    for (char const* fine : {" ", "~", "\xC2\xA0", "\xE2\x80\x8D", "\xE2\x80\xAF", "\xE2\x81\xA5", "\xE2\x81\xAA",
                             "Wachteln \xC3\xA4\xC3\x9F \xE9\xB6\x89", "\xD8\xB3\xD9\x85\xD8\xA7\xD9\x86"}) {
        CHECK(is_writable(fine));
        CHECK(escaped(fine) == fine);
        CHECK(refusal(fine).empty());
    }
}

TEST_CASE("a refusal says what it is and shows it harmlessly", "[fault]") {
    CHECK_THAT(refusal("a\nb"), Contains("found a line end in \"a\\u000ab\"; expected words on one line, in UTF-8"));
    CHECK_THAT(refusal("a\tb"), Contains("found a tab in"));
    CHECK_THAT(refusal("a\x1b"), Contains("found a control character in"));
    CHECK_THAT(refusal("a\xE2\x80\xAE"), Contains("found a sign that turns the direction of writing in"));
    CHECK_THAT(refusal("caf\xE9"), Contains("found a byte that is no UTF-8 in \"caf\\xe9\""));
    CHECK(on_one_line("a\r\nb\xC2\x85z") == "a  b z");
}

TEST_CASE("nothing of a fault reaches a terminal as an order", "[fault]") {
    CHECK(std::string(WrongUse("a\x1b[2J\xC2\x9B\n.toml: gone").what()) == "a\\u001b[2J\\u009b\\u000a.toml: gone");
    CHECK(in_quotes("a\x1b[31m") == "\"a\\u001b[31m\"");
    BadInput const placed = BadInput("x", "y").at({"\x1b.toml", 1, "\x07"});
    CHECK(std::string(placed.what()) == "\\u001b.toml:1: \\u0007: found x; expected y");
}
