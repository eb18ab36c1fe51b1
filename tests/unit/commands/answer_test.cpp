// What the flags mean before any table is asked: ages, moments, counts and units. Expected values by hand.
#include <catch2/catch.hpp>
#include <ctime>
#include <fstream>
#include <nlohmann/json.hpp>

#include "cropful/commands/clock.hpp"
#include "cropful/commands/command_line.hpp"
#include "cropful/fault.hpp"
#include "folder.hpp"

using namespace cropful;

namespace {

using Words = std::vector<std::string>;

Words about_bobwhites(std::string const& command, Words const& more = {}) {
    Words words{command, "--kind", "bobwhite", "--birds", "90", "--age", "3 d"};
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

nlohmann::json asked(Words words) {
    words.emplace_back("--json");
    return nlohmann::json::parse(commands::answer(words).out);
}

std::string complaint(Words const& words) {
    try {
        commands::answer(words);
    } catch (Fault const& fault) {
        return fault.what();
    }
    return "";
}

std::string here(char const* form) {
    std::time_t const now = std::time(nullptr);
    char text[40];
    return std::string(text, std::strftime(text, sizeof text, form, std::localtime(&now)));
}

}  // namespace

TEST_CASE("the birds are counted at their age", "[commands]") {
    auto const hatch = asked(about_bobwhites("last", {"--date", "2027-04-05", "--hopper", "12 L"})).at("hatches").at(0);
    auto const& fill = hatch.at("hoppers").at("fills").at(0);
    CHECK(fill.at("at") == "2027-04-08T07:00");
    CHECK(fill.at("age_d") == 3);
    CHECK(fill.at("birds").get<double>() == Approx(90));
}

TEST_CASE("without a date birds of three days hatched three days ago", "[commands]") {
    std::string const before = here("%FT%H:%M");
    auto const fill =
        asked(about_bobwhites("last", {"--hopper", "12 L"})).at("hatches").at(0).at("hoppers").at("fills").at(0);
    std::string const after = here("%FT%H:%M"), at = fill.at("at");
    CHECK(at >= before);
    CHECK(at <= after);
    CHECK(fill.at("age_d").get<double>() == Approx(3));
}

TEST_CASE("the clock reads as the C library's", "[commands]") {
    std::string const before = here("%F"), today = commands::now().iso_date(), after = here("%F");
    CHECK((today == before || today == after));
}

TEST_CASE("a moment before the birds are counted is refused", "[commands]") {
    Words const words = about_bobwhites("last", {"--date", "2027-04-05", "--hopper", "12 L", "--on"});
    auto on = [&](std::string const& moment) {
        Words all = words;
        all.push_back(moment);
        return complaint(all);
    };
    CHECK_THAT(on("2027-04-07T23:59"), Catch::Contains("--on") && Catch::Contains("2027-04-08T07:00"));
    CHECK(on("2027-04-08T07:00").empty());
}

TEST_CASE("birds are kept for at most five years, and past the age they have", "[commands]") {
    auto until = [](std::string const& age) { return complaint(about_bobwhites("plan", {"--until", age})); };
    CHECK(until("1826 d").empty());
    CHECK_THAT(until("1827 d"), Catch::Contains("1826 d"));
    CHECK_THAT(until("3 d"), Catch::Contains("after --age"));
    CHECK_THAT(complaint(about_bobwhites("plan")), Catch::Contains("--until"));
}

TEST_CASE("several hoppers are counted and last several times as long", "[commands]") {
    auto lasts = [](std::string const& count) {
        auto const hatch =
            asked(about_bobwhites("last", {"--date", "2027-04-05", "--hopper", "1 L", "--hoppers", count}))
                .at("hatches")
                .at(0);
        CHECK(hatch.at("hoppers").at("count") == std::stoi(count));
        return hatch.at("hoppers").at("fills").at(0).at("empty_after_d").get<double>();
    };
    CHECK(lasts("3") > 2 * lasts("1"));
    CHECK_THAT(complaint(about_bobwhites("last", {"--hopper", "1 L", "--hoppers", "1001"})), Catch::Contains("1000"));
}

TEST_CASE("--units turns the page into kilograms", "[commands]") {
    Words const words = about_bobwhites("last", {"--date", "2027-04-05", "--hopper", "12 L"});
    auto page = [&](std::string const& units) {
        Words all = words;
        all.insert(all.end(), {"--units", units});
        return commands::answer(all).out;
    };
    // 12 L of 38 lb/ft3, 608.7 g/L: 7.30 kg
    CHECK_THAT(page("us"), Catch::Contains("16.1 lb") && !Catch::Contains("7.3 kg"));
    CHECK_THAT(page("metric"), Catch::Contains("7.3 kg") && !Catch::Contains("16.1 lb"));
}

namespace {

/// Two hatches of April and May 2027, each kept for 6 weeks; the second comes twice, 4 weeks apart.
std::string two_hatches(sample::Folder const& folder) {
    std::string const file = folder.of("two_hatches.toml");
    std::ofstream(file) << R"(
[farm]
name = "Two hatches"
[feed.starter]
protein = "28 %"
[hopper.tube]
volume = "12 L"
[[hatch]]
name = "April"
kind = "bobwhite"
date = 2027-04-01
chicks = 90
until = "6 wk"
feeding = [{ from = "0 d", feed = "starter" }]
hopper = "tube"
[[hatch]]
name = "May"
kind = "bobwhite"
date = 2027-05-01
every = "4 wk"
times = 2
chicks = 90
until = "6 wk"
feeding = [{ from = "0 d", feed = "starter" }]
hopper = "tube"
)";
    return file;
}

std::vector<std::string> hatches_in(nlohmann::json const& plan) {
    std::vector<std::string> names;
    for (auto const& hatch : plan.at("hatches")) names.push_back(hatch.at("name"));
    return names;
}

}  // namespace

TEST_CASE("a farm file is answered from now on", "[commands]") {
    sample::Folder const folder;
    std::string const farm = two_hatches(folder);
    auto const before = asked({"plan", farm, "--now", "2027-03-01"});
    CHECK_FALSE(before.contains("from"));
    CHECK(hatches_in(before) == Words{"April", "May 1", "May 2"});
    auto const amid = asked({"plan", farm, "--now", "2027-05-10T06:30"});
    CHECK(amid.at("from") == "2027-05-10T06:30");
    for (auto const& hatch : amid.at("hatches")) {
        for (auto const& fill : hatch.at("hoppers").at("fills")) CHECK(fill.at("at") >= "2027-05-10T06:30");
    }
    // chicks of 1 May are filled for a week at a time: on the 1st, the 8th and the 15th
    CHECK(amid.at("hatches").at(1).at("hoppers").at("fills").at(0).at("at") == "2027-05-15T07:00");
    CHECK(hatches_in(asked({"check", farm, "--now", "2027-05-14"})) == Words{"May 1", "May 2"});
    CHECK(hatches_in(asked({"plan", farm, "--now", "2027-05-14", "--from", "start"})).size() == 3);
    CHECK(asked({"plan", farm, "--now", "2027-05-14", "--from", "2027-04-20"}).at("from") == "2027-04-20T07:00");
    CHECK_THAT(complaint({"plan", farm, "--now", "2028-01-01"}),
               Catch::Contains("the last birds left on Sat 10 Jul 2027") && Catch::Contains("--from start"));
    CHECK_THAT(complaint({"plan", farm, "--now", "2027-05-10", "--to", "2027-05-01"}),
               Catch::Contains("a date after the start, 2027-05-10T00:00"));
    CHECK_THAT(complaint({"plan", farm, "--now", "soon"}), Catch::Contains("--now"));
}

TEST_CASE("--hatch asks about one hatch and all its repeats", "[commands]") {
    sample::Folder const folder;
    std::string const farm = two_hatches(folder);
    Words const words{"plan", farm, "--now", "2027-03-01", "--hatch"};
    auto const of = [&](std::string const& name) {
        Words all = words;
        all.push_back(name);
        return hatches_in(asked(all));
    };
    CHECK(of("April") == Words{"April"});
    CHECK(of("May") == Words{"May 1", "May 2"});
    CHECK(of("May 2") == Words{"May 2"});
    CHECK(hatches_in(asked({"check", farm, "--now", "2027-03-01", "--hatch", "April", "--hatch", "May 1"})).size() ==
          2);
    CHECK_THAT(complaint({"plan", farm, "--hatch", "Apri"}), Catch::Contains("nearest: April"));
    CHECK_THAT(complaint({"plan", "--kind", "bobwhite", "--birds", "9", "--until", "6 wk", "--hatch", "April"}),
               Catch::Contains("farm file"));
    auto const away = asked({"away", farm, "--from", "2027-05-03", "--until", "2027-05-04", "--hatch", "May"});
    CHECK(away.at("vessels").size() == 1);
}
