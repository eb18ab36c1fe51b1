#include "cropful/page/door.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using nlohmann::json;

namespace {

json door_answer(char const* question) { return json::parse(cropful_ask(question)); }

}  // namespace

TEST_CASE("the door gives a page as data, and text as it is", "[page][door]") {
    json const page = door_answer(R"({"words": ["table", "kinds"]})");
    REQUIRE(page.at("status") == 0);
    REQUIRE(page.at("out") == "");
    REQUIRE(page.at("page").size() > 2);
    json const text = door_answer(R"({"words": ["plan", "rations/farms/backyard.toml", "--json", "--from", "start"]})");
    REQUIRE(text.at("status") == 0);
    REQUIRE(text.at("page") == nullptr);
    REQUIRE(json::parse(text.at("out").get<std::string>()).at("farm") == "Backyard");
}

TEST_CASE("the door says what is wrong, with the program's exit status", "[page][door]") {
    json const wrong = door_answer(R"({"words": ["plan", "none.toml"]})");
    REQUIRE(wrong.at("status") == 2);
    REQUIRE(wrong.at("err") == "none.toml: there is no such file");
    json const none = door_answer(R"({"words": ["plan", "rations/farms/backyard.toml", "--now", "2040-01-01"]})");
    REQUIRE(none.at("status") == 1);
    REQUIRE(door_answer("no question").at("status") == 2);
    REQUIRE(door_answer(R"({"words": ["--version"]})").at("out").get<std::string>().starts_with("cropful "));
}
