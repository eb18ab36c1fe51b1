// Chores, houses, courses, and what vessels are filled with, as a farm file says them.
#include <catch2/catch.hpp>

#include "faults.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using namespace cropful::domain;
using Catch::Contains;
using Catch::WithinRel;

namespace {

/// A farm with a house of each sort, vessels and two supplements; more keys of the farm and of its hatch, more tables.
std::string housed_text(std::string const& hatch, std::string const& head = "", std::string const& tables = "") {
    return "[farm]\nname = \"F\"\n" + head +
           "[feed.starter]\nprotein = \"24 %\"\n"
           "[hopper.tube]\nvolume = \"3 gal\"\n[drinker.jug]\nvolume = \"1 gal\"\n"
           "[supplement.tonic]\nrate = \"1 tsp per gal\"\ndays = 5\n"
           "[supplement.acid]\nrate = \"1 tsp per gal\"\n"
           "[house.tank]\nholds = 120\n[house.pen]\nholds = 80\ncount = 4\n" +
           tables +
           "[[hatch]]\nname = \"H\"\nkind = \"coturnix\"\ndate = 2027-04-05\nchicks = 90\n"
           "feeding = [{ feed = \"starter\", from = \"0 d\" }]\nuntil = \"6 wk\"\n" +
           hatch;
}

Farm housed(std::string const& hatch, std::string const& head = "", std::string const& tables = "") {
    return sample::farm_from(housed_text(hatch, head, tables));
}

std::string housing_fault(std::string const& hatch, std::string const& head = "", std::string const& tables = "") {
    return sample::fault_of([&] { housed(hatch, head, tables); });
}

std::string in_stages(std::string const& stages) { return "housing = [" + stages + "]\n"; }

std::string in_courses(std::string const& courses) { return "courses = [" + courses + "]\n"; }

}  // namespace

TEST_CASE("chores are hours of the day, in any order", "[readers]") {
    CHECK(housed("").chores.empty());
    auto const chores = housed("", "chores = [\"17:30\", \"06:30\"]\n").chores;
    REQUIRE(chores.size() == 2);
    CHECK_THAT(in_days(chores[0]) * 24, WithinRel(6.5, 1e-12));
    CHECK_THAT(in_days(chores[1]) * 24, WithinRel(17.5, 1e-12));
    CHECK(housed("", "chores = [\"05:00\"]\n").chores.size() == 1);
    CHECK(housed("", "chores = [\"21:59\"]\n").chores.size() == 1);
}

TEST_CASE("chores by night, twice or at no hour are faults", "[readers]") {
    for (char const* night : {"22:00", "23:30", "00:00", "04:59"}) {
        CHECK_THAT(housing_fault("", "chores = [\"" + std::string(night) + "\"]\n"),
                   Contains("farm.chores") && Contains("05:00 to 21:59"));
    }
    CHECK_THAT(housing_fault("", "chores = [\"07:00\", \"18:00\", \"07:00\"]\n"), Contains("different hours"));
    CHECK_THAT(housing_fault("", "chores = []\n"), Contains("different hours"));
    for (char const* none : {"7:00", "7 am", "24:00", "12:60", "12h00", "1:234", "::::0", "07:0:", "1::30"}) {
        INFO(none);
        CHECK_THAT(housing_fault("", "chores = [\"" + std::string(none) + "\"]\n"),
                   Contains("farm.chores") && Contains("an hour of the day"));
    }
    CHECK_THAT(housing_fault("", "chores = [\"\"]\n"), Contains("farm.chores"));
    CHECK_THAT(housing_fault("", "chores = [7]\n"), Contains("farm.chores"));
    CHECK_THAT(housing_fault("", "chores = \"07:00\"\n"), Contains("a list of hours"));
}

TEST_CASE("a date without an hour is the first chore of its day", "[readers]") {
    CHECK(housed("").hatches[0].date.iso() == "2027-04-05T07:00");
    CHECK(housed("", "chores = [\"17:30\", \"06:30\"]\n").hatches[0].date.iso() == "2027-04-05T06:30");
    auto text = housed_text("");
    text.replace(text.find("2027-04-05"), 10, "2027-04-05T14:30");
    CHECK(sample::farm_from(text).hatches[0].date.iso() == "2027-04-05T14:30");
}

TEST_CASE("a scale tells grams apart, or what it says", "[readers]") {
    CHECK_THAT(in_grams(housed("").scale_step), WithinRel(1.0, 1e-12));
    CHECK_THAT(in_grams(housed("", "scale = \"100 mg\"\n").scale_step), WithinRel(0.1, 1e-12));
    CHECK_THAT(housing_fault("", "scale = \"0 g\"\n"), Contains("farm.scale"));
    CHECK_THAT(housing_fault("", "scale = \"1 mL\"\n"), Contains("farm.scale"));
}

TEST_CASE("a house is a place that birds leave when their stage ends", "[readers]") {
    auto const farm = housed("");
    CHECK(farm.brooders.at("tank").count == 1);
    CHECK(farm.brooders.at("pen").count == 4);
    CHECK(farm.brooders.at("pen").until == longest_life);
    CHECK_THAT(housing_fault("", "", "[house.box]\ncount = 2\n"), Contains("house.box.holds"));
    CHECK_THAT(housing_fault("", "", "[brooder.tank]\nholds = 9\nuntil = \"3 wk\"\n"), Contains("tank"));
}

TEST_CASE("a house may hold another number of each kind, by age too", "[readers]") {
    auto const house = [](std::string const& holds) {
        return housed("", "", "[house.run]\nholds = " + holds + "\n").brooders.at("run");
    };
    auto const run =
        house("{ bobwhite = 100, Chukar = [{ from = \"3 wk\", birds = 60 }, { from = \"0 d\", birds = 90 }] }");
    CHECK(run.holds.empty());
    REQUIRE(run.of_kind.size() == 2);
    CHECK(in_birds(rooms_of(run, "bobwhite").at(0).birds) == 100);
    auto const& chukar = rooms_of(run, "chukar");
    REQUIRE(chukar.size() == 2);
    CHECK(in_birds(chukar[0].birds) == 90);
    CHECK(in_days(chukar[1].from) == 21);
    CHECK(rooms_of(run, "coturnix").empty());
    auto const same = house("100");
    CHECK(in_birds(rooms_of(same, "chukar").at(0).birds) == 100);
}

TEST_CASE("a house that says nothing of a kind is no house for it", "[readers]") {
    std::string const run = "[house.run]\nholds = { bobwhite = 100 }\n";
    std::string const words = "coturnix = 100 beside the others under holds of run";
    CHECK_THAT(housing_fault(in_stages("{ from = \"0 d\", house = \"run\" }"), "", run), Contains(words));
    CHECK_THAT(housing_fault("brooder = \"run\"\n", "", run), Contains(words));
    CHECK(housed("", "", run).brooders.contains("run"));  // where none of it lives
}

TEST_CASE("stages of housing, in any order", "[readers]") {
    auto const hatch =
        housed(in_stages("{ from = \"3 wk\", house = \"pen\", houses = 2, drinker = \"jug\" }, "
                         "{ from = \"0 d\", house = \"tank\", hopper = \"tube\", hoppers = 2, drinker = \"jug\", "
                         "drinkers = 3 }"))
            .hatches.at(0);
    REQUIRE(hatch.housing.size() == 2);
    Stage const &first = hatch.housing[0], &second = hatch.housing[1];
    CHECK(first.house == "tank");
    CHECK(in_days(first.from) == 0);
    CHECK_FALSE(first.houses);
    CHECK(first.hopper == "tube");
    CHECK(first.hoppers == 2);
    CHECK(first.drinkers == 3);
    CHECK(in_days(second.from) == 21);
    CHECK(second.houses == 2);
    CHECK_FALSE(second.hopper);
    CHECK(second.drinkers == 1);
}

TEST_CASE("housing that leaves them without a house, or with two, is a fault", "[readers]") {
    std::string const tank = "{ from = \"0 d\", house = \"tank\" }";
    CHECK_THAT(housing_fault("housing = []\n"), Contains("hatch.1.housing") || Contains("housing"));
    CHECK_THAT(housing_fault(in_stages("{ from = \"1 d\", house = \"tank\" }")), Contains("from their first day on"));
    CHECK_THAT(housing_fault(in_stages(tank + ", { from = \"0 d\", house = \"pen\" }")),
               Contains("not two from the same"));
    CHECK_THAT(housing_fault(in_stages(tank + ", { from = \"6 wk\", house = \"pen\" }")),
               Contains("while the birds are kept"));
    CHECK_THAT(housing_fault(in_stages("{ from = \"0 d\" }")), Contains("house"));
    CHECK_THAT(housing_fault(in_stages("{ from = \"0 d\", house = \"tnak\" }")), Contains("perhaps \"tank\""));
    CHECK_THAT(housing_fault(in_stages("{ from = \"0 d\", house = \"tank\", houses = 0 }")), Contains("houses"));
    CHECK_THAT(housing_fault(in_stages("{ from = \"0 d\", house = \"tank\", hoppers = 2 }")),
               Contains("only beside the key hopper"));
    CHECK_THAT(housing_fault(in_stages("{ from = \"0 d\", house = \"tank\", drinkers = 2 }")),
               Contains("only beside the key drinker"));
    CHECK_THAT(housing_fault(in_stages("{ from = \"0 d\", house = \"tank\", drinker = \"jugs\" }")),
               Contains("perhaps \"jug\""));
    CHECK_THAT(housing_fault(in_stages("{ from = \"0 d\", house = \"tank\", hose = 2 }")), Contains("hose"));
}

TEST_CASE("under housing no vessel and no brooder is named beside it", "[readers]") {
    std::string const stages = in_stages("{ from = \"0 d\", house = \"tank\" }");
    for (char const* key : {"hopper = \"tube\"", "drinker = \"jug\"", "brooder = \"pen\""}) {
        CHECK_THAT(housing_fault(stages + key + "\n"), Contains("in the stages of housing, not beside it"));
    }
}

TEST_CASE("birds that are there already have a house from that age on", "[readers]") {
    auto const at = [](std::string const& from) {
        auto text = housed_text(in_stages("{ from = \"" + from + "\", house = \"pen\" }"));
        std::string const date = "date = 2027-04-05\nchicks = 90\n";
        return text.replace(text.find(date), date.size(), "birds = 60\nage = \"3 wk\"\non = 2027-04-05\n");
    };
    CHECK(sample::farm_from(at("2 wk")).hatches[0].housing.size() == 1);
    CHECK(sample::farm_from(at("3 wk")).hatches[0].housing.size() == 1);
    CHECK_THAT(sample::fault_of([&] { sample::farm_from(at("22 d")); }), Contains("from their first day on"));
}

TEST_CASE("courses from an age or on a day, in order of age", "[readers]") {
    auto const courses = housed(in_courses("{ supplement = \"acid\", on = 2027-04-19, days = 3 }, "
                                           "{ supplement = \"tonic\", from = \"0 d\", days = 5 }, "
                                           "{ supplement = \"tonic\", from = \"17 d\", days = 1 }"))
                             .hatches.at(0)
                             .courses;
    REQUIRE(courses.size() == 3);
    CHECK(courses[0].supplement == "tonic");
    CHECK(courses[0].days_long == 5);
    CHECK(courses[1].supplement == "acid");
    CHECK_THAT(in_days(courses[1].from), WithinRel(14.0, 1e-9));
    CHECK(courses[1].days_long == 3);
    CHECK(in_days(courses[2].from) == 17);  // when the one before has ended
}

TEST_CASE("courses that overlap, or are not the birds', are faults", "[readers]") {
    CHECK_THAT(housing_fault(in_courses("{ supplement = \"tonic\", from = \"0 d\", days = 5 }, "
                                        "{ supplement = \"acid\", from = \"4 d\", days = 5 }")),
               Contains("one course after the other"));
    CHECK_THAT(housing_fault(in_courses("{ supplement = \"tonic\", from = \"0 d\", on = 2027-04-06, days = 5 }")),
               Contains("not both"));
    CHECK_THAT(housing_fault(in_courses("{ supplement = \"tonic\", days = 5 }")), Contains("from"));
    CHECK_THAT(housing_fault(in_courses("{ supplement = \"tonic\", from = \"0 d\" }")), Contains("days"));
    CHECK_THAT(housing_fault(in_courses("{ supplement = \"tonci\", from = \"0 d\", days = 5 }")),
               Contains("perhaps \"tonic\""));
    CHECK_THAT(housing_fault(in_courses("{ supplement = \"tonic\", from = \"6 wk\", days = 5 }")),
               Contains("while the birds are kept"));
    CHECK_THAT(housing_fault(in_courses("{ supplement = \"tonic\", on = 2027-04-04, days = 5 }")),
               Contains("while the birds are kept"));
}

TEST_CASE("a hatch has the course of its supplement, or courses", "[readers]") {
    CHECK(housed("supplement = \"tonic\"\n").hatches[0].supplement == "tonic");
    CHECK_THAT(housing_fault("supplement = \"acid\"\n"), Contains("whose table says days"));
    CHECK_THAT(
        housing_fault("supplement = \"tonic\"\n" + in_courses("{ supplement = \"acid\", from = \"9 d\", days = 5 }")),
        Contains("not both"));
}

TEST_CASE("how long a hopper is filled for, and how long feed may stand in it", "[readers]") {
    auto const hopper = [](std::string const& more) {
        return housed("", "", "[hopper.h]\nvolume = \"3 gal\"\n" + more).hoppers.at("h");
    };
    CHECK_FALSE(hopper("").fill_for);
    CHECK_FALSE(hopper("").at_most);
    CHECK(in_days(*hopper("fill_for = \"5 d\"\n").fill_for) == 5);
    CHECK(in_days(*hopper("at_most = \"3 wk\"\n").at_most) == 21);
    CHECK_THAT(housing_fault("", "", "[hopper.h]\nvolume = \"3 gal\"\nfill_for = \"0 d\"\n"), Contains("fill_for"));
    CHECK_THAT(housing_fault("", "", "[hopper.h]\nvolume = \"3 gal\"\nat_most = \"5 kg\"\n"), Contains("at_most"));
}

TEST_CASE("a batch is for the need or fills the drinkers", "[readers]") {
    auto const mixed = [](std::string const& more) {
        return housed("", "", "[supplement.s]\nrate = \"1 tsp per gal\"\n" + more).supplements.at("s");
    };
    CHECK_FALSE(mixed("").fills_drinkers);
    CHECK_FALSE(mixed("mix = \"need\"\n").fills_drinkers);
    CHECK(mixed("mix = \"full\"\n").fills_drinkers);
    CHECK(mixed("").days_long == 0);
    CHECK_THAT(housing_fault("", "", "[supplement.s]\nrate = \"1 tsp per gal\"\nmix = \"ful\"\n"),
               Contains("supplement.s.mix") && Contains("full"));
}

TEST_CASE("a trough that needs more than its drinker holds is a fault", "[readers]") {
    CHECK_THAT(housing_fault("", "", "[drinker.d]\nvolume = \"4 L\"\ndisplaced = \"1 L\"\nleast = \"3.1 L\"\n"),
               Contains("drinker.d.least"));
}
