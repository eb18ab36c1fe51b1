// Rows of several fills say which weeks they are about; a heading says what each feed weighs in the hopper.
#include "cropful/reports/fills_part.hpp"

#include <catch2/catch.hpp>

#include "cropful/domain/moment.hpp"
#include "cropful/reports/setting.hpp"
#include "reports/folding.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::Matchers::Contains;

namespace {

/// A fill of a day's time, of 240 birds of which one dies a day.
template <class Amount>
engine::Fill<Amount> done_daily(int day, Amount content, std::optional<Duration> change_after) {
    auto const at = domain::parse_moment("2027-04-05T07:00") + days(day);
    return {.at = at,
            .do_at = at,
            .age = days(day),
            .birds = birds(240 - day),
            .content = content,
            .brim = content,
            .put_in = content,
            .until = at + days(1),
            .used = content / 4.0,
            .empty_after = {},
            .lasts = {days(20), days(21), days(22)},
            .change_after = change_after};
}

engine::Fill<Volume> changed_daily(int day) { return done_daily(day, litres(4), days(1)); }

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
    auto& hoppers = *hatch.stages.at(0).hoppers;
    hoppers.fills.clear();
    for (int day = 0; day < 112; ++day) hoppers.fills.push_back(done_daily(day, kilograms(4), {}));
    auto const part = reports::set(reports::hoppers_part(hatch, Measures::us, hatch.hatch.date + days(200)));
    CHECK_THAT(part, Contains("week 1 ") && Contains("240-234") && Contains("week 16") && Contains("135-129"));
}

TEST_CASE("a hopper of two feeds of different density is not of one weight", "[reports]") {
    auto farm = sample::round_figures();  // 10 L of 0.5 kg/L, then of 0.6 kg/L
    auto const words = [&] {
        auto const hatch = sample::plan_of(farm).hatches.at(0);
        return reports::hoppers_words(hatch, *hatch.hoppers(), Measures::metric);
    };
    CHECK(words() == "1 x tube, each full with 5 kg of starter or 6 kg of grower");
    farm.feeds.at("grower").density = farm.feeds.at("starter").density;
    CHECK(words() == "1 x tube, 5 kg each when full");
}

TEST_CASE("each stage has its own fills, under its houses", "[reports]") {
    auto farm = sample::round_figures();
    farm.measures = Measures::metric;
    domain::Brooder pen;
    pen.key = "pen";
    pen.count = 4;
    pen.holds = {{days(0), birds(40)}};  // of 59.9 birds: two
    pen.until = domain::longest_life;
    farm.brooders.emplace("pen", pen);
    pen.key = "run";
    farm.brooders.emplace("run", pen);
    auto& hatch = farm.hatches.front();
    hatch.hopper.reset();
    hatch.drinker.reset();
    hatch.housing = {{.from = days(0), .house = "pen", .hopper = "tube", .drinker = "bell"},
                     {.from = days(210), .house = "run", .hopper = "tube", .hoppers = 2, .drinker = "bell"}};
    auto const plan = sample::plan_of(farm).hatches.at(0);
    auto const feed = reports::set(reports::hoppers_part(plan, Measures::metric, {}));
    CHECK_THAT(feed,
               Contains("pens 1-2: 2 x tube") && Contains("runs 1-2: 4 x tube") && Contains("the move to runs 1-2"));
    CHECK_THAT(feed, Contains("the end"));
    auto const water = reports::set(reports::drinkers_part(plan, Measures::metric, {}));
    CHECK_THAT(water, Contains("pens 1-2: 2 x bell") && Contains("runs 1-2: 2 x bell"));
    CHECK(reports::house_words(plan.stages.at(0)) == "pens 1-2");
    auto nowhere = plan.stages.at(0);
    nowhere.numbers.clear();
    CHECK(reports::house_words(nowhere) == "2 pens");
    nowhere.house.reset();
    CHECK(reports::house_words(nowhere).empty());
}
