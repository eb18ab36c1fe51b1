#include "cropful/reports/door_json.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cropful/fault.hpp"

using namespace cropful::reports;
using nlohmann::json;

namespace {

json page_through_door(Page const& page) { return json::parse(answer_json({.page = page})).at("page"); }

}  // namespace

TEST_CASE("a question is a list of words", "[reports][door]") {
    REQUIRE(question_words(R"({"words": ["today", "farm.toml", "--json"]})") ==
            std::vector<std::string>{"today", "farm.toml", "--json"});
    REQUIRE(question_words(R"({"words": []})").empty());
    for (char const* text : {"", "today", "{}", R"({"words": "today"})", R"({"words": [1]})", R"(["today"])"}) {
        CAPTURE(text);
        REQUIRE_THROWS_AS(question_words(text), cropful::WrongUse);
    }
}

TEST_CASE("an answer is text or a page", "[reports][door]") {
    json const text = json::parse(answer_json({.status = 1, .text = "a\n\"b\"", .err = "short"}));
    REQUIRE(text == json::parse(R"({"status": 1, "out": "a\n\"b\"", "page": null, "err": "short"})"));
    json const page = json::parse(answer_json({.page = Page(Rule{})}));
    REQUIRE(page == json::parse(R"({"status": 0, "out": "", "page": [{"block": "rule"}], "err": ""})"));
}

TEST_CASE("bytes that are no UTF-8 do not stop an answer", "[reports][door]") {
    REQUIRE(json::parse(answer_json({.err = "a\xff"})).at("err") == "a\xEF\xBF\xBD");
}

TEST_CASE("words are runs that look alike", "[reports][door]") {
    json const blocks = page_through_door(Heading{"a " + strong("b") + strong("c") + alarm("d"), 2});
    REQUIRE(blocks == json::parse(R"([{"block": "heading", "indent": 2, "words": [
        {"text": "a ", "look": "plain"}, {"text": "bc", "look": "strong"}, {"text": "d", "look": "alarm"}]}])"));
}

TEST_CASE("every block goes through the door", "[reports][door]") {
    Page page = Page(Title{"name", "time"}) + Page(Blank{}) + wrap("words", "- ", "  ") + both_ends("l", "r");
    json const blocks = page_through_door(page);
    json const kinds{blocks[0]["block"], blocks[1]["block"], blocks[2]["block"], blocks[3]["block"]};
    REQUIRE(kinds == json{"title", "blank", "paragraph", "two-ends"});
    REQUIRE(blocks[0]["name"][0]["text"] == "name");
    REQUIRE(blocks[0]["time"][0]["text"] == "time");
    REQUIRE(blocks[2]["words"][0]["text"] == "words");
    REQUIRE(blocks[2]["first"][0]["text"] == "- ");
    REQUIRE(blocks[2]["rest"][0]["text"] == "  ");
    REQUIRE(blocks[3]["left"][0]["text"] == "l");
    REQUIRE(blocks[3]["right"][0]["text"] == "r");
}

TEST_CASE("a table keeps its columns, headings, cells and bars", "[reports][door]") {
    Table table({Align::left, Align::right}, 4);
    table.head({"feed", "days"});
    table.add({"starter", "2.5"}, 2.5);
    table.add({"grower"});
    json const wanted = json::parse(R"({"block": "table", "columns": ["left", "right"], "headed": true, "indent": 4,
        "rows": [{"cells": [[{"text": "feed", "look": "plain"}], [{"text": "days", "look": "plain"}]], "bar": null},
                 {"cells": [[{"text": "starter", "look": "plain"}], [{"text": "2.5", "look": "plain"}]], "bar": 2.5},
                 {"cells": [[{"text": "grower", "look": "plain"}], []], "bar": null}]})");
    REQUIRE(page_through_door(table) == json::array({wanted}));
    REQUIRE(page_through_door(Picture{table}) == json::array({{{"block", "picture"}, {"table", wanted}}}));
}
