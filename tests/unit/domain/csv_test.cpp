#include "cropful/domain/csv.hpp"

#include <catch2/catch.hpp>

using namespace cropful::domain;

TEST_CASE("a line of cells", "[domain]") {
    CHECK(csv_line({"aaa", "b\"bb", "c,c"}) == "aaa,\"b\"\"bb\",\"c,c\"\r\n");  // RFC 4180, section 2, rules 5 to 7
    CHECK(csv_line({""}) == "\"\"\r\n");
    CHECK(csv_line({"", ""}) == ",\r\n");
    CHECK(csv_line({" a", "a "}) == "\" a\",\"a \"\r\n");
}

TEST_CASE("a number keeps every digit and has no exponent", "[domain]") {
    CHECK(csv_number(0.1) == "0.1");
    CHECK(csv_number(2) == "2");
    CHECK(csv_number(1e-7) == "0.0000001");
    CHECK(csv_number(123456789012.0) == "123456789012");
}

// The characters are those a spreadsheet takes for the start of a formula: OWASP, "CSV Injection".
TEST_CASE("a name is no formula", "[domain]") {
    for (std::string const start : {"=", "+", "-", "@", "\t", "\r", "\n"}) {
        CHECK(csv_name(start + "1+1") == "'" + start + "1+1");
    }
    CHECK(csv_name("A=1") == "A=1");
    CHECK(csv_name("").empty());
}
