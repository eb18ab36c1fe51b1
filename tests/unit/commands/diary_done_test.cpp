// `diary done` on the bobwhites of sample_farms.hpp a week old, before the first chore (07:00).
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

#include "cropful/commands/command_line.hpp"
#include "cropful/fault.hpp"
#include "folder.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using Catch::Contains;

namespace {

/// A farm of its own, whose list is ticked.
struct TickedBarn {
    sample::Folder folder;
    TickedBarn() { std::ofstream(folder.of("farm.toml")) << sample::bobwhites(); }

    [[nodiscard]] std::vector<std::string> words(std::vector<std::string> const& ticks) const {
        std::vector<std::string> all{"diary", "done", folder.of("farm.toml")};
        all.insert(all.end(), ticks.begin(), ticks.end());
        all.insert(all.end(), {"--now", "2027-04-12T06:00"});
        return all;
    }
    [[nodiscard]] std::string refused(std::vector<std::string> const& ticks) const {
        try {
            commands::answer(words(ticks));
        } catch (Fault const& fault) {
            return fault.what();
        }
        return "";
    }
    [[nodiscard]] nlohmann::json deeds() const {
        auto const answer = commands::answer({"today", folder.of("farm.toml"), "--now", "2027-04-12T06:00", "--json"});
        nlohmann::json all = nlohmann::json::array();
        auto const json = nlohmann::json::parse(answer.out);
        for (auto const& chore : json.at("chores")) {
            for (auto const& deed : chore.at("deeds")) all.push_back(deed);
        }
        return all;
    }
    [[nodiscard]] std::string number_of(std::string const& deed) const {
        for (auto const& one : deeds()) {
            if (one.at("deed") == deed) return std::to_string(one.at("n").get<int>());
        }
        return "none";
    }
};

}  // namespace

TEST_CASE("numbers that are none are refused, and nothing is written", "[commands]") {
    TickedBarn const barn;
    CHECK_THAT(barn.refused({}), Contains("what is done? Say the numbers of `cropful today`"));
    CHECK_THAT(barn.refused({"99"}), Contains("99 is no number of today's list, which ends with"));
    for (char const* word : {"0", "x", "1.5"}) {
        CHECK_THAT(barn.refused({word}), Contains("found \"" + std::string(word) + "\"; expected a whole number"));
    }
    CHECK_THAT(barn.refused({"all", "2"}), Contains("found \"all\""));
    CHECK(barn.folder.files() == 1);
}

TEST_CASE("an amount is one of the deed it is typed for", "[commands]") {
    TickedBarn const barn;
    CHECK_THAT(barn.refused({barn.number_of("look") + "=cat"}), Contains("found \"cat\"; expected a whole number"));
    CHECK_THAT(barn.refused({barn.number_of("top-up") + "=5 gal"}), Contains("expected a weight with its unit"));
    CHECK_THAT(barn.refused({barn.number_of("warmth") + "=2"}), Contains("no amount belongs to that task"));
    CHECK(barn.folder.files() == 1);
}

TEST_CASE("what is ticked is gone from the list, and cannot be ticked again", "[commands]") {
    TickedBarn const barn;
    std::string const number = barn.number_of("warmth");
    auto const before = barn.deeds().size();
    CHECK(barn.refused({number, number}).empty());
    CHECK(barn.number_of("warmth") == "none");
    CHECK(barn.deeds().size() == before - 1);
    CHECK_THAT(barn.refused({number}), Contains(number + " is done already"));
}

TEST_CASE("several numbers at once, and what was typed is said again", "[commands]") {
    TickedBarn const barn;
    std::string const look = barn.number_of("look");
    CHECK_THAT(commands::answer(barn.words({look + "=3"})).out, Contains("you say: 3 died"));
    CHECK_THAT(barn.refused({"1-99"}), Contains("is no number of today's list") || Contains("is done already"));
    CHECK_THAT(barn.refused({"3-"}), Contains("expected a whole number"));
}

TEST_CASE("an entry is mended by its number", "[commands]") {
    TickedBarn const barn;
    auto const edit = [&](std::vector<std::string> const& more) {
        std::vector<std::string> words{"diary", "edit", barn.folder.of("farm.toml"), "--now", "2027-04-12T06:00"};
        words.insert(words.end(), more.begin(), more.end());
        return words;
    };
    auto const refused = [&](std::vector<std::string> const& more) {
        try {
            commands::answer(edit(more));
        } catch (Fault const& fault) {
            return std::string(fault.what());
        }
        return std::string();
    };
    CHECK_THAT(refused({"1", "--remove"}), Contains("there is no such entry"));
    commands::answer({"diary", "add", barn.folder.of("farm.toml"), "--at", "2027-04-10T06:00", "--now",
                      "2027-04-12T06:00", "--died", "2"});
    CHECK_THAT(refused({}), Contains("which entry?"));
    CHECK_THAT(refused({"2", "--remove"}), Contains("expected a whole number from 1 to 1"));
    CHECK_THAT(refused({"1"}), Contains("say what is right"));
    CHECK_THAT(refused({"1", "--amount", "2 lb"}), Contains("expected a whole number"));
    CHECK_THAT(refused({"1", "--at", "2027-04-13"}), Contains("a moment that has been"));
    auto const mended = commands::answer(edit({"1", "--amount", "5", "--at", "2027-04-11T06:00", "--json"}));
    auto const json = nlohmann::json::parse(mended.out);
    CHECK(json.at("was").at("birds") == 2);
    CHECK(json.at("now").at("birds") == 5);
    CHECK(json.at("now").at("at") == "2027-04-11T06:00");
    CHECK_THAT(commands::answer(edit({"1", "--remove"})).out, Contains("It is taken out"));
    CHECK_THAT(refused({"1", "--remove"}), Contains("there is no such entry"));
}
