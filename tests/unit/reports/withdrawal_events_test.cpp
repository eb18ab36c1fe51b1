// The end of each withdrawal in the calendar: grower is fed from 6 to 16 wk, day 112, and the hatch is kept till then.
#include <catch2/catch.hpp>

#include "cautions.hpp"
#include "reports/agenda.hpp"

using namespace cropful;
using namespace cropful::quantities;
using Catch::Matchers::Contains;

namespace {

std::vector<reports::Event> withdrawal_events(domain::Farm const& medicated_farm) {
    auto const plan = sample::plan_of(medicated_farm);
    std::vector<reports::Event> events;
    reports::add_withdrawals(events, plan.hatches.at(0), plan.farm);
    return events;
}

}  // namespace

TEST_CASE("the withdrawals of birds and of eggs are events apart", "[calendar]") {
    auto medicated_farm = sample::medicated("salinomycin", 50);
    CHECK(withdrawal_events(medicated_farm).empty());
    auto& hatch = medicated_farm.hatches[0];
    auto& medicine = *medicated_farm.feeds.at("grower").medicated;
    medicine.withdrawal = days(5);
    medicine.eggs_withdrawal = days(9);
    CHECK(withdrawal_events(medicated_farm).size() == 1);  // nobody says that they lay
    hatch.laying_from = days(100);
    auto const events = withdrawal_events(medicated_farm);
    REQUIRE(events.size() == 2);
    CHECK(events[0].at.iso() == (hatch.date + days(117)).iso());
    CHECK(events[1].at.iso() == (hatch.date + days(121)).iso());
    CHECK_THAT(events[0].summary, Contains("Not before now: 5 d withdrawal of "));
    CHECK_THAT(events[1].summary, Contains("Not before now: 9 d withdrawal of eggs after "));
    CHECK_THAT(events[1].description, Contains("states a withdrawal of 9 d for eggs"));
    for (auto const& event : events) {
        CHECK(event.not_before);
        CHECK_THAT(event.description, Contains("the label, your veterinarian and local law decide."));
    }
    CHECK(events[0].which != events[1].which);  // so that their UIDs differ
}

TEST_CASE("a medicine in the water has its withdrawals too", "[calendar]") {
    auto medicated_farm = sample::with_supplement("Tonic");  // on day 0
    auto& tonic = medicated_farm.supplements.at("tonic");
    CHECK(withdrawal_events(medicated_farm).empty());
    tonic.withdrawal = days(4);
    tonic.drug = "snake oil";
    auto const events = withdrawal_events(medicated_farm);
    REQUIRE(events.size() == 1);
    CHECK(events[0].at.iso() == (medicated_farm.hatches[0].date + days(5)).iso());  // a day's course, 4 d
    CHECK_THAT(events[0].description,
               Contains("Tonic (snake oil) is planned to be given until ") && Contains("later if it was given longer"));
}
