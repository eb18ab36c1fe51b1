// Where a hatch lives, and what is stirred into its water when.
#include <catch2/catch.hpp>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using namespace cropful::domain;

namespace {

Farm with_boxes() {
    auto farm = sample::farm_from(sample::bobwhites());  // to 16 wk
    Brooder box;
    box.key = "box";
    box.until = days(21);
    farm.brooders.emplace("box", box);
    return farm;
}

std::vector<std::tuple<std::string, double, double>> residences(Farm const& farm) {
    std::vector<std::tuple<std::string, double, double>> all;
    for (auto const& [house, from, to] : residences_of(farm.hatches[0], farm)) {
        all.emplace_back(house, in_days(from), in_days(to));
    }
    return all;
}

using Residences = std::vector<std::tuple<std::string, double, double>>;

}  // namespace

TEST_CASE("a hatch without housing has one stage, of its own vessels", "[domain]") {
    auto const farm = with_boxes();
    auto const stages = stages_of(farm.hatches[0]);
    REQUIRE(stages.size() == 1);
    CHECK_FALSE(stages[0].house);
    CHECK(stages[0].hopper == "tube");
    CHECK(stages[0].hoppers == 3);
    CHECK(stages[0].drinker == "bell");
    CHECK(stages[0].drinkers == 6);
    CHECK(residences(farm).empty());
}

TEST_CASE("a brooder is left at its until, or with the birds", "[domain]") {
    auto farm = with_boxes();
    auto& hatch = farm.hatches[0];
    hatch.brooder = "box";
    CHECK(residences(farm) == Residences{{"box", 0, 21}});
    hatch.until = days(14);
    CHECK(residences(farm) == Residences{{"box", 0, 14}});
    hatch.first_age = days(10);
    CHECK(residences(farm) == Residences{{"box", 10, 14}});
    hatch.until = days(100);
    hatch.first_age = days(21);
    CHECK(residences(farm).empty());
}

TEST_CASE("stages of housing follow one another, to the end", "[domain]") {
    auto farm = with_boxes();
    auto& hatch = farm.hatches[0];
    hatch.hopper.reset();
    hatch.drinker.reset();
    hatch.housing = {{.from = days(0), .house = "box", .drinker = "bell"},
                     {.from = days(28), .house = "pen", .hopper = "tube"},
                     {.from = days(70), .house = "run"}};
    CHECK(residences(farm) == Residences{{"box", 0, 28}, {"pen", 28, 70}, {"run", 70, 112}});  // whatever box.until
    CHECK(stages_of(hatch).size() == 3);
    CHECK(has_hopper(hatch));
    CHECK(has_drinker(hatch));
    hatch.first_age = days(30);  // they are in the pens already
    CHECK(residences(farm) == Residences{{"pen", 30, 70}, {"run", 70, 112}});
    hatch.until = days(70);
    CHECK(residences(farm) == Residences{{"pen", 30, 70}});
    hatch.housing[1].hopper.reset();
    CHECK_FALSE(has_hopper(hatch));
}

TEST_CASE("courses in order of age, the one of the hatch's supplement among them", "[domain]") {
    auto farm = with_boxes();
    auto& hatch = farm.hatches[0];
    CHECK_FALSE(has_course(hatch));
    CHECK(courses_of(hatch, farm).empty());
    Supplement tonic;
    tonic.key = "tonic";
    tonic.from = days(20);
    tonic.days_long = 3;
    farm.supplements.emplace("tonic", tonic);
    hatch.supplement = "tonic";
    CHECK(has_course(hatch));
    hatch.courses = {{"acid", days(30), 2}, {"wormer", days(50), 1}};
    auto const courses = courses_of(hatch, farm);
    REQUIRE(courses.size() == 3);
    CHECK(courses[0].supplement == "tonic");
    CHECK(courses[0].days_long == 3);
    CHECK(in_days(courses[1].from) == 30);
    CHECK(courses[2].supplement == "wormer");
}

TEST_CASE("chores that a farm does not state are those of 07:00 and 18:00", "[domain]") {
    Farm farm;
    CHECK(chores_of(farm) == std::vector<Duration>{days(7 / 24.0), days(18 / 24.0)});
    farm.chores = {days(0.5)};
    CHECK(chores_of(farm) == std::vector<Duration>{days(0.5)});
}
