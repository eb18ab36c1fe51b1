#include "cropful/domain/nearest.hpp"

#include <catch2/catch.hpp>

using cropful::domain::nearest;

TEST_CASE("a slip of the pen finds its word", "[domain]") {
    std::vector<std::string> const known{"bobwhite", "pheasant", "chukar", "feed", "hopper", "change_every"};
    CHECK(nearest("bobwhit", known) == "bobwhite");
    CHECK(nearest("Bobwhite", known) == "bobwhite");
    CHECK(nearest("feasant", known) == "pheasant");
    CHECK(nearest("chuckar", known) == "chukar");
    CHECK(nearest("hoper", known) == "hopper");
    CHECK(nearest("fede", known) == "feed");
    CHECK(nearest("feed", known) == "feed");
    CHECK(nearest("changes_evry", known) == "change_every");
}

TEST_CASE("a third of the word may be wrong, and no more", "[domain]") {
    // Twelve letters: four edits, not five. Three letters: one edit.
    CHECK(nearest("abcdefghXXXX", {"abcdefghijkl"}) == "abcdefghijkl");
    CHECK(nearest("abcdefgXXXXX", {"abcdefghijkl"}).empty());
    CHECK(nearest("abX", {"abc"}) == "abc");
    CHECK(nearest("aXX", {"abc"}).empty());
    CHECK(nearest("XXX", {"abc"}).empty());
}

TEST_CASE("no word is suggested that shares nothing", "[domain]") {
    CHECK(nearest("ab", {"xy"}).empty());
    CHECK(nearest("", {"ab"}).empty());
    CHECK(nearest("ostrich", {"bobwhite", "feed"}).empty());
    CHECK(nearest("feed", {}).empty());
}

TEST_CASE("the closest wins, and of equals the first", "[domain]") {
    CHECK(nearest("hoppers", {"hoped", "hopper"}) == "hopper");
    CHECK(nearest("cat", {"bat", "hat"}) == "bat");
}
