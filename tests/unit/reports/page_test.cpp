#include "cropful/reports/page.hpp"

#include <sstream>

#include <catch2/catch.hpp>

#include "cropful/reports/setting.hpp"

using namespace cropful::reports;

TEST_CASE("a table aligns its columns and leaves no trailing spaces", "[reports][page]") {
    Table table({Align::left, Align::right, Align::left}, 2);
    table.add({"feed", "bags", "why"});
    table.add({"starter", "12", "eaten"});
    table.add({"grower", "3"});
    REQUIRE(set(table) ==
            "  feed     bags  why\n"
            "  starter    12  eaten\n"
            "  grower      3\n");
}

TEST_CASE("a column that is empty throughout takes no room", "[reports][page]") {
    Table table({Align::left, Align::left, Align::right});
    table.add({"a", "", "1"});
    table.add({"b", "", "22"});
    REQUIRE(set(table) == "a   1\nb  22\n");
}

TEST_CASE("the last column of a table is broken under itself", "[reports][page]") {
    Table table({Align::left, Align::left});
    std::string const words = "one two three four five six seven eight nine ten eleven twelve thirteen fourteen";
    table.add({"note", words + " fifteen"});
    REQUIRE(set(table) ==
            "note  one two three four five six seven eight nine ten eleven twelve thirteen\n"
            "      fourteen fifteen\n");
}

TEST_CASE("width counts characters, not bytes", "[reports][page]") {
    REQUIRE(width("") == 0);
    REQUIRE(width("abc") == 3);
    REQUIRE(width("B\xC3\xA4r") == 3);
    Table table({Align::left, Align::left});
    table.add({"B\xC3\xA4r", "x"});
    table.add({"abc", "y"});
    REQUIRE(set(table) == "B\xC3\xA4r  x\nabc  y\n");
}

TEST_CASE("no wrapped line is longer than the page", "[reports][page]") {
    std::string text;
    for (int i = 0; i < 100; ++i) text += std::string(static_cast<std::size_t>(i % 17 + 1), 'x') + " ";
    std::istringstream wrapped(set(wrap(text, "  - ", "    ")));
    std::string words, line;
    while (std::getline(wrapped, line)) {
        REQUIRE(width(line) <= page_width);
        REQUIRE(line.substr(0, 4) == (words.empty() ? "  - " : "    "));
        words += line.substr(4) + " ";
    }
    REQUIRE(words == text);
}

TEST_CASE("a line of exactly 80 columns is not broken, one of 81 is", "[reports][page]") {
    std::string const half(39, 'a');
    REQUIRE(set(wrap(half + " " + half + "b")) == half + " " + half + "b\n");
    REQUIRE(set(wrap(half + " " + half + "bc")) == half + "\n" + half + "bc\n");
}

TEST_CASE("a per cent sign stays with its number", "[reports][page]") {
    std::string const most(75, 'a');
    REQUIRE(set(wrap(most + " 24 % more")) == most + " 24 %\nmore\n");
    REQUIRE(set(wrap(most + "a 24 % more")) == most + "a\n24 % more\n");
}

TEST_CASE("a word longer than the page is broken, after a stroke where there is one", "[reports][page]") {
    REQUIRE(set(wrap("a " + std::string(100, 'w') + " b")) ==
            "a\n" + std::string(80, 'w') + "\n" + std::string(20, 'w') + " b\n");
    std::string const folder(60, 'f'), page(40, 'p');
    REQUIRE(set(wrap(folder + "/" + page)) == folder + "/\n" + page + "\n");
    REQUIRE(set(wrap("")) == "\n");
}

TEST_CASE("both ends of a line, or two lines", "[reports][page]") {
    REQUIRE(set(both_ends("Saltgrass Bend", "Mon 5 Apr")) == "Saltgrass Bend" + std::string(57, ' ') + "Mon 5 Apr\n");
    REQUIRE(set(both_ends(std::string(50, 'n'), std::string(40, 'd'))) ==
            std::string(50, 'n') + "\n  " + std::string(40, 'd') + "\n");
    REQUIRE(set(both_ends("alone", "")) == "alone\n");
}
