#include "cropful/reports/setting.hpp"

#include <catch2/catch.hpp>

#include "cropful/reports/words.hpp"

using namespace cropful::reports;

namespace {

constexpr Setting narrow{.width = 40};

/// Two hoppers; the second lasts half as long.
Table hoppers(Align last) {
    Table table({Align::left, Align::right, last}, 2);
    table.head({"hopper", "lasts", ""});
    table.add({"tube", "4 d", "4"});
    table.add({"trough", "2 d", "2"});
    return table;
}

}  // namespace

TEST_CASE("what is no page comes back as it is", "[reports][setting]") {
    std::string const json = "{\"a\": \"" + std::string(100, 'x') + "\"}\n";
    REQUIRE(set(json, {.width = 40, .colour = true}) == json);
    REQUIRE(set("").empty());
}

TEST_CASE("paragraphs, plain lines and rules follow the width", "[reports][setting]") {
    std::string const page = std::string(page_width, '=') + "\n  FILL  1 x tube, 22.1 lb each and some more words\n" +
                             wrap("one two three four five six seven eight", "  - ", "    ");
    REQUIRE(set(page, narrow) == std::string(40, '=') +
                                     "\n  FILL 1 x tube, 22.1 lb each and some\n    more words\n"
                                     "  - one two three four five six seven\n    eight\n");
    REQUIRE(set(page, {.width = 90}).starts_with(std::string(90, '=') + "\n"));
}

TEST_CASE("a table too wide for its page is written out, each cell behind its heading", "[reports][setting]") {
    Table table({Align::left, Align::left, Align::right, Align::right}, 2);
    table.head({"fill", "age", "birds", "sure for"});
    table.add({"from Sat 20 Mar", "weeks 1-2", "30", "6 d 2 h"});
    table.add({"from Thu 8 Apr", "weeks 3-4", "", "4 d"});
    REQUIRE(set(table.text(), narrow) ==
            "  from Sat 20 Mar  age weeks 1-2\n    birds 30  sure for 6 d 2 h\n"
            "  from Thu 8 Apr  age weeks 3-4\n    sure for 4 d\n");
    REQUIRE(set(table.text()).starts_with("  fill             age        birds  sure for\n"));
}

TEST_CASE("bars are drawn to one scale for the page, where they are wanted and fit", "[reports][setting]") {
    std::string const page = hoppers(Align::bar).text();
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
    Table longer({Align::left, Align::bar});
    longer.add({"bell", "8"});
    REQUIRE(set(page + longer.text(), {.width = 80, .bars = Bars::ascii}).find("tube      4 d  ##########\n") !=
            std::string::npos);
}

TEST_CASE("a picture is there where bars are, and nowhere else", "[reports][setting]") {
    std::string const picture = hoppers(Align::bar).picture();
    REQUIRE(set("a\n" + picture + "b\n") == "a\nb\n");
    REQUIRE(set("a\n" + picture + "b\n", {.width = 22, .bars = Bars::ascii}) == "a\nb\n");
    REQUIRE(set("a\n" + picture + "b\n", {.width = 23, .bars = Bars::ascii}) ==
            "a\n\n  hopper  lasts\n  tube      4 d  ######\n  trough    2 d  ###\nb\n");
}

TEST_CASE("no word can pose as a mark or an escape sequence", "[reports][setting]") {
    REQUIRE(set(wrap("a\x1f\x1c\x1b[31mz\n")) == "a\\u001f\\u001c\\u001b[31mz\\u000a\n");
    REQUIRE(set(both_ends("a\x1ez", "")) == "a\\u001ez\n");
    REQUIRE(set("plain\x1b[1m\n" + wrap("")) == "plain\\u001b[1m\n\n");
}

TEST_CASE("headings are bold, warnings bold and red, and the words are the same", "[reports][setting]") {
    constexpr Setting colour{.width = 80, .colour = true};
    auto const seen = [&](std::string const& line) { return set(line + "\n" + wrap(""), colour); };
    REQUIRE(seen("WATCH") == "\x1b[1mWATCH\x1b[0m\n\n");
    REQUIRE(seen("BUY, to be sure") == "\x1b[1mBUY\x1b[0m, to be sure\n\n");
    REQUIRE(seen("RICHER FEED: less") == "\x1b[1mRICHER FEED\x1b[0m: less\n\n");
    REQUIRE(seen("The birds:") == "\x1b[1mThe birds:\x1b[0m\n\n");
    REQUIRE(seen("EVERY HATCH FITS") == "\x1b[1mEVERY HATCH FITS\x1b[0m\n\n");
    for (char const* plain : {"A bird", "    ok  1 x tube", "Stop! Look", "  - a note"}) {
        REQUIRE(seen(plain) == std::string(plain) + "\n\n");
    }
    auto const paragraph = [&](std::string const& text) { return set(wrap(text, "  ! ", "    "), colour); };
    REQUIRE(paragraph("Small chicks drown") == "  \x1b[1;31m!\x1b[0m Small chicks drown\n");
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
        REQUIRE(set(table.text(), colour) == said + "  SHORT by a head\n");
        REQUIRE(set(both_ends(said, "x"), colour).find('\x1b') == std::string::npos);
    }
}

TEST_CASE("a mark takes no room, and its look ends with each line", "[reports][setting]") {
    REQUIRE(width(alarm("SHORT")) == 5);
    Table table({Align::left, Align::right});
    table.add({alarm("SHORT"), "1"});
    table.add({"meets", "2"});
    REQUIRE(set(table.text()) == "SHORT  1\nmeets  2\n");
    std::string const words = "SOMEBODY MUST COME AND SEE ABOUT THE BIRDS BEFORE IT IS TOO LATE";
    std::string const page = set(wrap(alarm(words), "  ", "    "), {.width = 40, .colour = true});
    REQUIRE(page ==
            "  \x1b[1;31mSOMEBODY MUST COME AND SEE ABOUT THE\x1b[0m\n"
            "    \x1b[1;31mBIRDS BEFORE IT IS TOO LATE\x1b[0m\n");
}
