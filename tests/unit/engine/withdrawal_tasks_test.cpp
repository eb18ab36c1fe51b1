// The end of each withdrawal on the agenda: grower is fed from 6 to 16 wk, day 112, and the hatch is kept till then.
#include <catch2/catch.hpp>

#include "cautions.hpp"
#include "cropful/engine/agenda.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

std::vector<engine::Task> ends_of(domain::Farm const& medicated_farm) {
    auto const rations = readers::RationsReader().load(medicated_farm);
    auto const agenda = engine::make_agenda({medicated_farm, rations}, {});
    auto ends = agenda.tasks;
    std::erase_if(ends, [](auto const& task) { return task.work != engine::Work::withdrawal_ends; });
    return ends;
}

}  // namespace

TEST_CASE("the withdrawals of birds and of eggs are tasks apart", "[agenda]") {
    auto medicated_farm = sample::medicated("salinomycin", 50);
    CHECK(ends_of(medicated_farm).empty());
    auto& hatch = medicated_farm.hatches[0];
    auto& medicine = *medicated_farm.feeds.at("grower").medicated;
    medicine.withdrawal = days(5);
    medicine.eggs_withdrawal = days(9);
    CHECK(ends_of(medicated_farm).size() == 1);  // nobody says that they lay
    hatch.laying_from = days(100);
    auto const ends = ends_of(medicated_farm);
    REQUIRE(ends.size() == 2);
    // the hatch is of a chore, and so are the ends: 112 + 5 and 112 + 9 days later
    CHECK(ends[0].at.iso() == (hatch.date + days(117)).iso());
    CHECK(ends[1].at.iso() == (hatch.date + days(121)).iso());
    CHECK(!ends[0].of_eggs);
    CHECK(ends[1].of_eggs);
    CHECK(ends[0].id != ends[1].id);
}

TEST_CASE("a medicine in the water has its withdrawals too", "[agenda]") {
    auto medicated_farm = sample::with_supplement("Tonic");  // on day 0
    auto& tonic = medicated_farm.supplements.at("tonic");
    CHECK(ends_of(medicated_farm).empty());
    tonic.withdrawal = days(4);
    auto const ends = ends_of(medicated_farm);
    REQUIRE(ends.size() == 1);
    CHECK(ends[0].at.iso() == (medicated_farm.hatches[0].date + days(5)).iso());  // a day's course, 4 d
    CHECK(ends[0].withdrawal == days(4));
}
