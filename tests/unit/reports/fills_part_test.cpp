// Rows of several fills say which weeks they are about; a heading says what each feed weighs in the hopper.
#include "cropful/reports/fills_part.hpp"

#include <catch2/catch.hpp>

#include "cropful/reports/setting.hpp"
#include "reports/folding.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::Matchers::Contains;

namespace {

engine::Fill<Volume> changed_daily(int day) {
    return {.at = domain::Moment(std::chrono::year_month_day(std::chrono::year(2027), std::chrono::month(4),
                                                             std::chrono::day(5))) +
                  days(day),
            .age = days(day),
            .birds = birds(240 - day),
            .content = litres(4),
            .used = litres(1),
            .empty_after = {},
            .lasts = {days(20), days(21), days(22)},
            .change_after = days(1)};
}

}  // namespace

TEST_CASE("a folded row says the weeks it is about, whatever folded it", "[reports]") {
    std::vector<engine::Fill<Volume>> fills;
    for (int day = 0; day < 112; ++day) fills.push_back(changed_daily(day));
    auto const folds = reports::fold(fills, days(112), false);
    REQUIRE(folds.size() == 1);
    CHECK(folds[0].ages_words() == "weeks 1-16");
    CHECK(reports::fold(fills, days(112), true).at(9).ages_words() == "day 9");
    fills.erase(fills.begin() + 5, fills.end());
    CHECK(reports::fold(fills, days(5), false).at(0).ages_words() == "week 1");
}

TEST_CASE("the birds of a folded row are those at its first and its last fill", "[reports]") {
    engine::HatchPlan hatch = sample::plan_of(sample::bobwhites()).hatches.at(0);
    hatch.drinkers->fills.clear();
    for (int day = 0; day < 112; ++day) hatch.drinkers->fills.push_back(changed_daily(day));
    CHECK_THAT(reports::set(reports::drinkers_part(hatch, Measures::us, hatch.hatch.date + days(200))),
               Contains("weeks 1-16") && Contains("240-129"));
}

TEST_CASE("a hopper of two feeds of different density is not of one weight", "[reports]") {
    auto farm = sample::round_figures();  // 10 L of 0.5 kg/L, then of 0.6 kg/L
    farm.measures = Measures::metric;
    auto hatch = sample::plan_of(farm).hatches.at(0);
    CHECK(reports::hoppers_words(hatch, Measures::metric) == "1 x tube, each 5 kg of starter or 6 kg of grower");
    farm.feeds.at("grower").density = farm.feeds.at("starter").density;
    hatch = sample::plan_of(farm).hatches.at(0);
    CHECK(reports::hoppers_words(hatch, Measures::metric) == "1 x tube, 5 kg each");
}
