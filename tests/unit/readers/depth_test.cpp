#include "readers/depth.hpp"

#include <catch2/catch.hpp>

#include <string>

#include "cropful/fault.hpp"
#include "faults.hpp"
#include "readers/document.hpp"

using namespace cropful::readers;
using cropful::sample::fault_of;
using Line = std::optional<std::size_t>;

namespace {

std::string key(std::size_t parts) {
    std::string text = "a";
    while (--parts > 0) text += ".a";
    return text;
}

}  // namespace

TEST_CASE("a header, dotted keys, lists and tables count together, whatever the lines", "[readers]") {
    // 5 parts of a header, 2 dots, a list, a table, 1 dot: 10 deep at the last dot
    std::string const text = "[a.b.c.d.e]\nx.y.z = [\n1,\n{ v = 2, p.q = 3 }\n]\n";
    CHECK(too_deep(text, 10) == Line());
    CHECK(too_deep(text, 9) == Line(4));
    CHECK(too_deep(text, 8) == Line(4));  // the table
    CHECK(too_deep(text, 7) == Line(2));  // the list
    CHECK(too_deep(text, 6) == Line(2));  // the second dot
    CHECK(too_deep(text, 4) == Line(1));
}

TEST_CASE("what is closed no longer counts", "[readers]") {
    std::string text = "[[a]]\n";
    for (int i = 0; i < 100; ++i) text += "k = [{ a.b = [1.5, 2.5] }, { a.b = [1.5] }]\n[[a.b]]\n";
    CHECK(too_deep(text, 8) == Line());
}

TEST_CASE("strings and comments hold no keys", "[readers]") {
    std::string const dots(60, '.'), lists(60, '[');
    CHECK(too_deep("a = \"" + dots + "\\\"" + lists + "\" # " + dots + lists + "\n", 2) == Line());
    CHECK(too_deep("a = '" + lists + "\\' # '\n", 2) == Line());
    CHECK(too_deep("a = \"\"\"\n" + lists + "\\\"\"\" \"\"\"\"\"\nb = '''" + dots + "'''''\n", 2) == Line());
    CHECK(too_deep("a = \"\"\"\n\\\n x\"\"\"\nb.c.d = 1\n", 1) == Line(4));
    CHECK(too_deep("\"" + dots + "\".\"" + dots + "\".c = 1\n", 2) == Line());
}

TEST_CASE("a document as deep as is read, and a level more", "[readers]") {
    CHECK_NOTHROW(parse_document("[" + key(50) + "]\nx = 1\n", "x.toml"));
    CHECK_NOTHROW(parse_document("x = " + std::string(50, '[') + "1" + std::string(50, ']') + "\n", "x.toml"));
    auto const fault = [](std::string const& text) { return fault_of([&] { parse_document(text, "x.toml"); }); };
    CHECK_THAT(fault("[" + key(51) + "]\nx = 1\n"), Catch::Contains("x.toml:1: found tables, lists and dotted keys"));
    CHECK_THAT(fault("x = " + std::string(51, '[') + "1" + std::string(51, ']')), Catch::Contains("more than 50 deep"));
}

TEST_CASE("keys that nest line by line cannot exhaust the stack", "[readers]") {
    std::string text = "x = [\n";
    for (int i = 0; i < 60; ++i) text += "{ " + key(300) + " = [\n";
    text += "1\n";
    for (int i = 0; i < 60; ++i) text += "] }\n";
    CHECK_THAT(fault_of([&] { parse_document(text + "]\n", "x.toml"); }), Catch::Contains("x.toml:2:"));
}
