#include "cropful/readers/csv.hpp"

#include <catch2/catch.hpp>

#include "cropful/domain/csv.hpp"
#include "faults.hpp"

using namespace cropful;
using namespace cropful::readers;
using Catch::Contains;
using Cells = std::vector<std::vector<std::string>>;

namespace {

Cells cells_of(std::string const& text) {
    Cells all;
    for (CsvRow const& row : parse_csv(text, "x.csv")) all.push_back(row.cells);
    return all;
}

std::string csv_fault(std::string const& text) {
    return sample::fault_of([&] { parse_csv(text, "x.csv"); });
}

}  // namespace

// The examples of RFC 4180, section 2, by their numbers there.
TEST_CASE("the examples of RFC 4180", "[readers]") {
    Cells const two{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
    CHECK(cells_of("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") == two);                 // 1
    CHECK(cells_of("aaa,bbb,ccc\r\nzzz,yyy,xxx") == two);                     // 2
    CHECK(cells_of("field_name,field_name,field_name\r\naaa,bbb,ccc\r\n") ==  // 3
          Cells{{"field_name", "field_name", "field_name"}, {"aaa", "bbb", "ccc"}});
    CHECK(cells_of("aaa,bbb,ccc") == Cells{{"aaa", "bbb", "ccc"}});    // 4
    CHECK(cells_of("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx") == two);  // 5
    CHECK(cells_of("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx") ==    // 6
          Cells{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(cells_of("\"aaa\",\"b\"\"bb\",\"ccc\"") == Cells{{"aaa", "b\"bb", "ccc"}});  // 7
}

TEST_CASE("blanks belong to a cell; empty cells stay, empty lines do not", "[readers]") {
    CHECK(cells_of(" a , b\nc,\n") == Cells{{" a ", " b"}, {"c", ""}});
    CHECK(cells_of("\n\r\na,b\n\n\nc,d\n\n") == Cells{{"a", "b"}, {"c", "d"}});
    CHECK(cells_of("a\n\"\"\n") == Cells{{"a"}, {""}});
    CHECK(cells_of(",\n\"\",\"\"") == Cells{{"", ""}, {"", ""}});
    CHECK(cells_of("").empty());
}

TEST_CASE("a byte-order mark is passed over, once and at the start only", "[readers]") {
    CHECK(cells_of("\xEF\xBB\xBF\"a\",b") == Cells{{"a", "b"}});
    CHECK(cells_of("\xEF\xBB\xBF\xEF\xBB\xBF") == Cells{{"\xEF\xBB\xBF"}});
}

TEST_CASE("a row knows the line it starts on, though cells run over lines", "[readers]") {
    auto const rows = parse_csv("a,b\r\n\"1\n2\r\n3\",x\n\nc,d\n", "x.csv");
    REQUIRE(rows.size() == 3);
    CHECK(rows[1].line == 2);
    CHECK(rows[2].line == 6);
}

TEST_CASE("what is no CSV is refused with its line", "[readers]") {
    CHECK(csv_fault("a\n\"b\nc") == "x.csv:2: found a quote that is never closed; expected a closing quote");
    CHECK_THAT(csv_fault("a\nb\"c"), Contains("x.csv:2: found \"b\"c\"; expected quotes around the whole cell"));
    CHECK_THAT(csv_fault("a\n\"b\nc\"d"), Contains("x.csv:3: found \"d\" after a closing quote"));
    CHECK_THAT(csv_fault("a\n\n\"b\"\rc"),
               Contains("x.csv:3: found a carriage return alone; expected lines that end with CRLF or LF"));
    CHECK_THAT(csv_fault("a,b\nc\n"), Contains("x.csv:2: found 1 cells; expected 2 cells, as in the first line"));
    CHECK_THAT(csv_fault("a\nb\ncaf\xE9\n"),
               Contains("x.csv:3: found letters that are not UTF-8; expected text in UTF-8"));
    CHECK_THAT(csv_fault(std::string("a\nb\0c", 5)), Contains("x.csv:2: found a byte of nought"));
}

TEST_CASE("a line is written so that it is read back", "[readers]") {
    std::vector<std::string> const odd{"=1+1", "+1", "-1", "@x", "a\r\nb", "\n", "\"", ",", "\xEF\xBB\xBF", "\t", "é"};
    CHECK(cells_of(domain::csv_line(odd)) == Cells{odd});
    for (std::string const& one : odd) CHECK(cells_of(domain::csv_line({one})) == Cells{{one}});
}
