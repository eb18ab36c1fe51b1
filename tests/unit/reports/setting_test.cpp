#include "cropful/reports/setting.hpp"

#include <catch2/catch.hpp>

#include "cropful/reports/page.hpp"

using namespace cropful::reports;

namespace {

constexpr Setting narrow{.width = 40};

/// Two hoppers; the second lasts half as long.
Table hoppers() {
    Table table({Align::left, Align::right}, 2);
    table.head({"hopper", "lasts"});
    table.add({"tube", "4 d"}, 4);
    table.add({"trough", "2 d"}, 2);
    return table;
}

}  // namespace

TEST_CASE("paragraphs, headings and rules follow the width", "[reports][setting]") {
    REQUIRE(set({}).empty());
    Page const page = Title{"a", "b"} + Page(Rule()) +
                      heading("FILL", ", 22.1 lb each and some more words to read", 2) +
                      wrap("one two three four five six seven eight", "  - ", "    ");
    REQUIRE(set(page, narrow) == "a" + std::string(38, ' ') + "b\n" + std::string(40, '=') + "\n" +
                                     std::string(40, '-') +
                                     "\n  FILL, 22.1 lb each and some more\n    words to read\n"
                                     "  - one two three four five six seven\n    eight\n");
    REQUIRE(set(Rule(), {.width = 90}) == std::string(90, '-') + "\n");
}

TEST_CASE("parts that say something stand apart", "[reports][setting]") {
    REQUIRE(set(apart({Page(), wrap("a"), Page(), wrap("b")})) == "a\n\nb\n");
    REQUIRE(spaced({}).empty());
    REQUIRE(set(wrap("a") + spaced(wrap("b"))) == "a\n\nb\n");
}

TEST_CASE("a table too wide for its page is written out, each cell behind its heading", "[reports][setting]") {
    Table table({Align::left, Align::left, Align::right, Align::right}, 2);
    table.head({"fill", "age", "birds", "sure for"});
    table.add({"from Sat 20 Mar", "weeks 1-2", "30", "6 d 2 h"});
    table.add({"from Thu 8 Apr", "weeks 3-4", "", "4 d"});
    REQUIRE(set(table, narrow) ==
            "  from Sat 20 Mar  age weeks 1-2\n    birds 30  sure for 6 d 2 h\n"
            "  from Thu 8 Apr  age weeks 3-4\n    sure for 4 d\n");
    REQUIRE(set(table).starts_with("  fill             age        birds  sure for\n"));
}

TEST_CASE("bars are drawn to one scale for the page, where they are wanted and fit", "[reports][setting]") {
    Page const page = hoppers();
    REQUIRE(set(page) == "  hopper  lasts\n  tube      4 d\n  trough    2 d\n");
    REQUIRE(set(page, {.width = 80, .bars = Bars::ascii}) == "  hopper  lasts\n  tube      4 d  " +
                                                                 std::string(20, '#') + "\n  trough    2 d  " +
                                                                 std::string(10, '#') + "\n");
    REQUIRE(set(page, {.width = 24, .bars = Bars::ascii}) ==
            "  hopper  lasts\n  tube      4 d  #######\n  trough    2 d  ####\n");
    REQUIRE(set(page, {.width = 24, .bars = Bars::blocks}) ==
            "  hopper  lasts\n  tube      4 d  \u2588\u2588\u2588\u2588\u2588\u2588\u2588\n"
            "  trough    2 d  \u2588\u2588\u2588\u258c\n");
    REQUIRE(set(page, {.width = 22, .bars = Bars::ascii}) == set(page, {.width = 22}));
    Table longer({Align::left});
    longer.add({"bell"}, 8);
    REQUIRE(set(page + longer, {.width = 80, .bars = Bars::ascii}).find("tube      4 d  ##########\n") !=
            std::string::npos);
}

TEST_CASE("a picture is there where bars are, and nowhere else", "[reports][setting]") {
    Page const page = wrap("a") + Picture{hoppers()} + wrap("b");
    REQUIRE(set(page) == "a\nb\n");
    REQUIRE(set(page, {.width = 22, .bars = Bars::ascii}) == "a\nb\n");
    REQUIRE(set(page, {.width = 23, .bars = Bars::ascii}) ==
            "a\n\n  hopper  lasts\n  tube      4 d  ######\n  trough    2 d  ###\nb\n");
}

TEST_CASE("no word can pose as an escape sequence", "[reports][setting]") {
    REQUIRE(set(wrap("a\x1f\x1c\x1b[31mz\n")) == "a\\u001f\\u001c\\u001b[31mz\\u000a\n");
    REQUIRE(set(both_ends("a\x1ez", "")) == "a\\u001ez\n");
    REQUIRE(set(heading("plain\x1b[1m") + wrap("")) == "plain\\u001b[1m\n\n");
}

TEST_CASE("headings are bold, warnings bold and red, and the words are the same", "[reports][setting]") {
    constexpr Setting colour{.width = 80, .colour = true};
    REQUIRE(set(heading("WATCH"), colour) == "\x1b[1mWATCH\x1b[0m\n");
    REQUIRE(set(heading("BUY", ", to be sure"), colour) == "\x1b[1mBUY\x1b[0m, to be sure\n");
    REQUIRE(set(Heading{alarm("LOOK NOW")}, colour) == "\x1b[1;31mLOOK NOW\x1b[0m\n");
    REQUIRE(set(Title{"a b", ""}, {.width = 40, .colour = true}) ==
            "\x1b[1ma b\x1b[0m\n" + std::string(40, '=') + "\n");
    REQUIRE(set(warning("Small chicks drown"), colour) == "  \x1b[1;31m!\x1b[0m Small chicks drown\n");
    REQUIRE(set(warning("Small chicks drown")) == "  ! Small chicks drown\n");
    REQUIRE(set(wrap(alarm("SHORT") + " by 3 %"), colour) == "\x1b[1;31mSHORT\x1b[0m by 3 %\n");
    REQUIRE(set(wrap(alarm("SHORT") + " by 3 %")) == "SHORT by 3 %\n");
    REQUIRE(set(wrap(alarm_capitals("OVER: too much") + "; " + alarm_capitals("meets")), colour) ==
            "\x1b[1;31mOVER\x1b[0m: too much; meets\n");
}

TEST_CASE("words a user has chosen are never taken for a warning or a heading", "[reports][setting]") {
    constexpr Setting colour{.width = 80, .colour = true};
    for (char const* name :
         {"SHORT run", "ALARM", "LOOK NOW", "NO 3", "! x", "NOT POSSIBLE", "OVER", "SOMEBODY MUST COME"}) {
        std::string const said = name;
        REQUIRE(set(wrap(said + ": 240 chicks"), colour) == said + ": 240 chicks\n");
        Table table({Align::left, Align::left});
        table.add({said, "SHORT by a head"});
        REQUIRE(set(table, colour) == said + "  SHORT by a head\n");
        REQUIRE(set(both_ends(said, "x"), colour).find('\x1b') == std::string::npos);
    }
}

TEST_CASE("a look takes no room and ends with each line", "[reports][setting]") {
    REQUIRE(alarm("SHORT").width() == 5);
    Table table({Align::left, Align::right});
    table.add({alarm("SHORT"), "1"});
    table.add({"meets", "2"});
    REQUIRE(set(table) == "SHORT  1\nmeets  2\n");
    std::string const words = "SOMEBODY MUST COME AND SEE ABOUT THE BIRDS BEFORE IT IS TOO LATE";
    std::string const page = set(wrap(alarm(words), "  ", "    "), {.width = 40, .colour = true});
    REQUIRE(page ==
            "  \x1b[1;31mSOMEBODY MUST COME AND SEE ABOUT THE\x1b[0m\n"
            "    \x1b[1;31mBIRDS BEFORE IT IS TOO LATE\x1b[0m\n");
}
