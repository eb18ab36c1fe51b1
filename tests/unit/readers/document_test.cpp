#include "readers/document.hpp"

#include <catch2/catch.hpp>

#include "cropful/fault.hpp"
#include "faults.hpp"
#include "readers/forms.hpp"

using namespace cropful;
using namespace cropful::readers;
using sample::fault_of;

namespace {

Table root_of(std::string const& text) { return Table::root(parse_document(text, "x.toml")); }

using Catch::Contains;

}  // namespace

TEST_CASE("keys and tables come in the order of the file", "[readers]") {
    Table root = root_of("[t]\nz = 1\na = 2\nm = 3\n[feed.young]\n[feed.adult]\n");
    CHECK(root.need_table("t").keys() == std::vector<std::string>{"z", "a", "m"});
    auto const feeds = root.tables("feed");
    REQUIRE(feeds.size() == 2);
    CHECK(feeds[0].name == "young");
    CHECK(feeds[1].name == "adult");
}

TEST_CASE("an absent key is nothing, the default or a fault at the table's head", "[readers]") {
    Table root = root_of("a = 1\n\n[t]\nb = 2\n");
    Table t = root.need_table("t");
    CHECK_FALSE(t.maybe("bag", a_mass).has_value());
    CHECK(t.maybe("part", a_percentage, 0.25) == 0.25);
    CHECK_THAT(fault_of([&] { t.need("bag", a_mass); }), Contains("x.toml:3: t.bag: found nothing; expected a weight"));
}

TEST_CASE("a fault of a parser is placed at its key, in a list too", "[readers]") {
    Table root = root_of("[t]\nbag = \"5 gal\"\nbags = [\"5 lb\",\n\"6 gal\"]\n");
    Table t = root.need_table("t");
    CHECK_THAT(fault_of([&] { t.need("bag", a_mass); }), Contains("x.toml:2: t.bag: found \"5 gal\""));
    CHECK_THAT(fault_of([&] { t.need("bags", list_of(a_mass)); }), Contains("x.toml:4: t.bags.2: found \"6 gal\""));
}

TEST_CASE("the items of an array of tables are counted from 1", "[readers]") {
    Table root = root_of("[[hatch]]\nkind = 1\n[[hatch]]\n");
    auto hatches = root.array("hatch");
    REQUIRE(hatches.size() == 2);
    CHECK_THAT(fault_of([&] { hatches[1].need("kind", a_text); }), Contains("x.toml:3: hatch.2.kind: found nothing"));
}

TEST_CASE("a key nobody asked for is a fault that offers the nearest", "[readers]") {
    Table root = root_of("price = 3\n\nprise = 4\n");
    root.maybe("price", a_price);
    CHECK(fault_of([&] { root.done(); }) ==
          "x.toml:3: prise: found an unknown key; expected \"price\", the nearest known key");
    root.maybe("prise", a_price);
    CHECK(fault_of([&] { root.done(); }) == "no fault");
}

TEST_CASE("a value of another sort is shown as it is written", "[readers]") {
    Table root = root_of("a = 24\nb = 2.5\nc = true\nd = 2027-04-05\ne = [1]\nf = {}\ng = []\n");
    auto const found = [&](char const* key) { return fault_of([&] { root.need(key, a_percentage); }); };
    CHECK_THAT(found("a"), Contains("found 24 (a bare number); expected a percentage in quotes, such as \"24 %\""));
    CHECK_THAT(found("b"), Contains("found 2.5 (a bare number)"));
    CHECK_THAT(found("c"), Contains("found true"));
    CHECK_THAT(found("d"), Contains("found 2027-04-05"));
    CHECK_THAT(found("e"), Contains("found a list"));
    CHECK_THAT(found("f"), Contains("found a table"));
    CHECK_THAT(found("g"), Contains("found an empty list"));
}

TEST_CASE("dates come as TOML dates, local date-times and text", "[readers]") {
    Table root = root_of("a = 2027-04-05\nb = 2027-04-05T14:30:00\nc = \"2027-04-05\"\nd = 2027-04-05T14:30:00Z\n");
    CHECK(root.need("a", a_date).iso() == "2027-04-05T00:00");
    CHECK(root.need("b", a_date).iso() == "2027-04-05T14:30");
    CHECK(root.need("c", a_date) == root.need("a", a_date));
    CHECK_THAT(fault_of([&] { root.need("d", a_date); }), Contains("without a time zone"));
}

TEST_CASE("counts are whole and bounded, numbers finite", "[readers]") {
    Table root =
        root_of("a = 1\nb = 10\nc = 11\nd = 0\ne = 2.0\nf = nan\ng = inf\nh = -0.5\ni = 9223372036854775807\n");
    WholeNumber const count{1, 10};
    CHECK(root.need("a", count) == 1);
    CHECK(root.need("b", count) == 10);
    for (auto const* key : {"c", "d", "e", "f", "i"}) CHECK_THROWS_AS(root.need(key, count), BadInput);
    CHECK(root.need("e", a_price) == 2.0);
    for (auto const* key : {"f", "g", "h", "i"}) CHECK_THROWS_AS(root.need(key, a_price), BadInput);
}

TEST_CASE("words are one line, not empty, not endless", "[readers]") {
    Table root = root_of("a = \" \"\nb = \"x\\u001b[0m\"\nc = \"" + std::string(201, 'x') + "\"\nd = \"Sängerhof\"\n");
    for (auto const* key : {"a", "b", "c"}) CHECK_THROWS_AS(root.need(key, a_text), BadInput);
    CHECK(root.need("d", a_text) == "Sängerhof");
}

TEST_CASE("what is no TOML is a fault with its line", "[readers]") {
    auto const fault = [](std::string const& text) { return fault_of([&] { parse_document(text, "x.toml"); }); };
    CHECK_THAT(fault("a = 1\nb 2\n"), Contains("x.toml:2: found something that is not TOML"));
    CHECK_THAT(fault("a = 1\na = 2\n"), Contains("x.toml:2:"));
    CHECK_THAT(fault("a = \"\xff\"\n"), Contains("x.toml:1:"));
    CHECK_THAT(fault(std::string("a\0= 1", 6)), Contains("x.toml:1:"));
    CHECK_THAT(fault("\n" + std::string(5000, '[')), Contains("x.toml:2:"));
    CHECK_THAT(fault("[.]\n"), Contains("x.toml:1:"));
    CHECK_THAT(fault("a = " + std::string(5000, '[')), Contains("x.toml:1:"));
    std::string deep = "a";
    for (int i = 0; i < 100'000; ++i) deep += ".a";
    CHECK_THAT(fault(deep + " = 1\n"), Contains("x.toml:1: found tables, lists and dotted keys more than 50 deep"));
}

TEST_CASE("a word shown in a fault cannot upset a terminal", "[readers]") {
    CHECK(in_quotes("a\x1b[31m") == "\"a\\u001b[31m\"");
    CHECK(in_quotes(std::string(59, 'x') + "ä") == '"' + std::string(59, 'x') + "...\"");
    CHECK(in_quotes(std::string(60, 'x')) == '"' + std::string(60, 'x') + '"');
}
