// Each caution is due in one small farm and not in its twin: water, what is stirred into it, and vessels.
#include <catch2/catch.hpp>

#include "cautions.hpp"
#include "cropful/rations/limits.hpp"
#include "cropful/readers/farm.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using sample::due;
using sample::medicated;
using sample::quotes;
using sample::states;
using sample::with_supplement;

namespace {

domain::Farm watered() { return sample::farm_from(sample::bobwhites()); }

/// What the caution of stale feed says to put into each hopper of a hatch for a week, in kg; 0 where it names none.
double fed_for_a_week(domain::Farm const& farm, std::string const& hatch) {
    for (domain::Caution const& one : sample::plan_of(farm).cautions) {
        if (one.id != "stale-feed") continue;
        for (auto const& portion : std::get<std::vector<domain::Portion>>(one.with.at("weekly"))) {
            if (portion.to == hatch) return in_kilograms(portion.amount);
        }
    }
    return 0;
}

}  // namespace

TEST_CASE("sodium in the water against the guides", "[cautions]") {
    // Guide maximum 50 mg/L (ICAR e-course)
    auto farm = with_supplement("tonic");
    CHECK_FALSE(due(farm, "sodium-water"));
    farm.supplements.at("tonic").sodium = 0.06;
    CHECK(states(farm, "sodium-water", {{"added", kilograms_per_litre(60e-6)}, {"form", "guide"}}));
    CHECK(quotes(farm, "sodium-water", "limit", "50 mg/L (poultry)"));
    CHECK_FALSE(due(farm, "sodium-lethal"));
}

TEST_CASE("sodium at which chicks died is not to be given", "[cautions]") {
    // 983 mg/L, 2.5 g of salt a litre: more deaths of young Japanese quail; 3934 mg/L: 77.8 % of chicks died (Hwangbo
    // et al. 2006)
    auto farm = with_supplement("tonic", "10 g per L");
    farm.supplements.at("tonic").sodium = 0.098;
    CHECK(due(farm, "sodium-water"));
    CHECK_FALSE(due(farm, "sodium-lethal"));
    farm.supplements.at("tonic").sodium = 0.0984;
    CHECK(due(farm, "sodium-lethal"));
    CHECK_FALSE(due(farm, "sodium-water"));
    farm.supplements.at("tonic").sodium = 0.3934;
    farm.supplements.at("tonic").rate = parse_rate("10.1 g per L");
    CHECK(quotes(farm, "sodium-lethal", "limit", "77.8 % died"));
}

TEST_CASE("limits are ranked by their values, whatever the order of their rows", "[cautions]") {
    auto const row = [](double level, bool stop) {
        return rations::Limit{.key = "sodium_feed",
                              .applies = "",
                              .level = level,
                              .words = "",
                              .meaning = "",
                              .stop = stop,
                              .source = {}};
    };
    std::vector<rations::Limit> const limits{row(983, true), row(350, false), row(50, false)};
    CHECK(rations::passed(limits, "sodium_feed", 50).empty());
    REQUIRE(rations::passed(limits, "sodium_feed", 1000).size() == 3);
    CHECK(rations::passed(limits, "sodium_feed", 1000).front()->level == 50);
    CHECK(rations::passed(limits, "sodium_feed", 1000).back()->level == 983);
    CHECK(rations::deadly(rations::passed(limits, "sodium_feed", 983)) != nullptr);  // from this level on
    CHECK(rations::deadly(rations::passed(limits, "sodium_feed", 982.9)) == nullptr);
    CHECK(rations::passed(limits, "salt_feed", 1000).empty());
}

TEST_CASE("ounces of what", "[cautions]") {
    CHECK(states(with_supplement("tonic", "4 oz per 128 gal"), "bare-ounces", {{"rate", "4 oz per 128 gal"}}));
    CHECK_FALSE(due(with_supplement("tonic", "4 fl oz per 128 gal"), "bare-ounces"));
}

TEST_CASE("amprolium beside a supplement that may hold thiamine", "[cautions]") {
    auto farm = with_supplement("tonic");
    CHECK_FALSE(due(farm, "thiamine"));
    farm.feeds.at("starter").medicated = domain::Medication{"amprolium", kilograms(0.159), days(0)};
    CHECK(due(farm, "thiamine"));
    farm.supplements.at("tonic").title = "Amprolium 9.6 % solution";
    CHECK_FALSE(due(farm, "thiamine"));
}

TEST_CASE("a medicine in the water: who may order it", "[cautions]") {
    // 21 CFR 520.100(d): amprolium in water for growing chickens, turkeys and laying hens; 520.154a(d)(4): bacitracin
    // methylenedisalicylate for growing quail; both 2015 edition
    CHECK(states(with_supplement("Amprolium 9.6 % solution"), "water-drug-approval", {{"form", "to order"}}));
    CHECK(due(with_supplement("Oxytetracycline soluble powder"), "water-drug-approval"));
    CHECK_FALSE(due(with_supplement("Bacitracin MD soluble"), "water-drug-approval"));
    CHECK(quotes(with_supplement("Bacitracin MD soluble"), "water-drug-conditions", "conditions",
                 "400 mg per US gallon"));
    for (char const* harmless : {"tonic", "Electrolytes", "Amproliumfree vitamins"}) {
        CHECK_FALSE(due(with_supplement(harmless), "water-drug-approval"));
        CHECK_FALSE(due(with_supplement(harmless), "water-drug-conditions"));
    }
}

TEST_CASE("a medicine that only the key drug names", "[cautions]") {
    auto farm = with_supplement("Blue powder");
    CHECK_FALSE(due(farm, "water-drug-approval"));
    farm.supplements.at("tonic").drug = "Tetracycline";
    CHECK(due(farm, "water-drug-approval"));
    CHECK_FALSE(due(farm, "drug-unknown"));
    farm.supplements.at("tonic").drug = "snake oil";
    CHECK(states(farm, "drug-unknown", {{"supplement", "Blue powder"}, {"drug", "snake oil"}}));
}

TEST_CASE("one substance in feed and water at the same ages", "[cautions]") {
    // 21 CFR 520.100(d), 558.55: the sole source of amprolium
    auto farm = medicated("amprolium with ethopabate", 1);  // from 6 wk on
    auto const solution = with_supplement("Amprolium 9.6 % solution");
    farm.supplements = solution.supplements;
    farm.hatches[0].supplement = "tonic";
    CHECK_FALSE(due(farm, "drug-in-feed-and-water"));
    farm.supplements.at("tonic").from = days(42);
    CHECK(states(farm, "drug-in-feed-and-water", {{"form", "same"}}));
    farm.feeds.at("grower").medicated->drug = "monensin";
    CHECK(states(farm, "drug-in-feed-and-water", {{"form", "two"}, {"fed", "monensin"}}));
    farm.supplements.at("tonic").from = days(0);
    CHECK_FALSE(due(farm, "drug-in-feed-and-water"));
}

TEST_CASE("a medicine in the water of hens", "[cautions]") {
    auto farm = with_supplement("Amprolium 9.6 % solution");
    farm.supplements.at("tonic").from = days(60);
    CHECK_FALSE(due(farm, "water-drug-eggs"));
    farm.hatches[0].laying_from = days(76);  // the course ends on day 61, and two weeks more are day 75
    CHECK_FALSE(due(farm, "water-drug-eggs"));
    farm.hatches[0].laying_from = days(74);
    CHECK(states(farm, "water-drug-eggs", {{"form", "near lay"}}));
    farm.hatches[0].laying_from = days(50);
    CHECK(states(farm, "water-drug-eggs", {{"form", "in lay"}}));
    farm.supplements.at("tonic").title = "tonic";
    CHECK_FALSE(due(farm, "water-drug-eggs"));
}

TEST_CASE("acid in metal founts", "[cautions]") {
    CHECK(due(with_supplement("Apple cider vinegar"), "acid-in-metal"));
    CHECK(due(with_supplement("Water acidifier"), "acid-in-metal"));
    CHECK_FALSE(due(with_supplement("Amino acids"), "acid-in-metal"));
    CHECK_FALSE(due(with_supplement("Vitamin C (ascorbic acid)"), "acid-in-metal"));
}

TEST_CASE("vitamins for weeks", "[cautions]") {
    auto farm = with_supplement("Vitamins and electrolytes");
    farm.supplements.at("tonic").days_long = 7;
    CHECK_FALSE(due(farm, "vitamins-for-weeks"));
    farm.supplements.at("tonic").days_long = 28;
    CHECK(states(farm, "vitamins-for-weeks", {{"days", 28.0}}));
    farm.supplements.at("tonic").title = "tonic";
    CHECK_FALSE(due(farm, "vitamins-for-weeks"));
}

TEST_CASE("solutions that stand too long", "[cautions]") {
    auto farm = with_supplement("tonic");  // 11 h lie between chores by day, 13 h by night
    CHECK_FALSE(due(farm, "solution-life"));
    farm.supplements.at("tonic").keeps = days(12 / 24.0);
    CHECK(states(farm, "solution-life", {{"keeps", days(12 / 24.0)}}));
    farm.supplements.at("tonic").keeps = days(13 / 24.0);
    CHECK_FALSE(due(farm, "solution-life"));
    farm.supplements.at("tonic").keeps.reset();
    CHECK(due(farm, "solution-life-unstated"));
}

TEST_CASE("water is changed daily under 3 weeks, every two days later", "[cautions]") {
    // common practice; a full set of drinkers lasts these chicks for many days
    auto farm = watered();
    auto& every = farm.drinkers.at("bell").change_every;
    every = days(1);
    CHECK_FALSE(due(farm, "standing-water"));
    every = days(2);
    CHECK(due(farm, "standing-water"));
    farm.hatches[0].first_age = days(21);
    CHECK_FALSE(due(farm, "standing-water"));
    every = days(3);
    CHECK(states(farm, "standing-water", {{"form", "stated"}, {"every", days(3)}}));
    every.reset();
    CHECK(states(farm, "standing-water", {{"form", "unstated"}}));
    every = days(2);
    farm.hatches[0].until = days(22.5);  // the only fill, changed by nobody, stands for a day and a half
    CHECK_FALSE(due(farm, "standing-water"));
    farm.hatches[0].until = days(112);
    every.reset();
    farm.drinkers.at("bell").volume = litres(0.5);  // dry within a day
    CHECK_FALSE(due(farm, "standing-water"));
}

TEST_CASE("a hopper whose feed may stand for weeks, and what to put in for 7 d", "[cautions]") {
    // 1 kg a day and 0.6 kg/L: 8 L last 5 d, 60 L 36 d
    auto farm = sample::round_figures();
    farm.measures = Measures::metric;
    farm.hatches[0].date = domain::Moment(farm.hatches[0].date.date());  // whole days from midnight
    farm.hatches[0].feeding = {{"grower", days(0)}};
    farm.hatches[0].until = days(260);
    farm.hoppers.at("tube").volume = litres(8);
    CHECK_FALSE(due(farm, "stale-feed"));
    farm.hoppers.at("tube").volume = litres(60);
    CHECK_FALSE(due(farm, "stale-feed"));  // it is filled for a fortnight
    farm.hoppers.at("tube").at_most = days(40);
    CHECK(fed_for_a_week(farm, "April") == Approx(7));
    farm.hatches[0].until = farm.hatches[0].first_age + days(14);  // the birds leave in time
    CHECK_FALSE(due(farm, "stale-feed"));
    farm = watered();  // three 3 gal tubes over 240 chicks: some weeks
    CHECK_FALSE(due(farm, "stale-feed"));
    farm.hoppers.at("tube").at_most = days(40);
    CHECK(due(farm, "stale-feed"));
    farm.hoppers.at("tube").at_most.reset();
    farm.hoppers.at("tube").fill_for = days(10);  // chicks get fresh feed every week
    CHECK(due(farm, "stale-feed"));
    farm.hoppers.at("tube").fill_for = days(7);
    CHECK_FALSE(due(farm, "stale-feed"));
    farm.hoppers.at("tube").at_most = days(40);
    farm.hoppers.at("tube").fill_for.reset();
    farm.hoppers.at("tube").volume = litres(1);
    CHECK_FALSE(due(farm, "stale-feed"));
}

TEST_CASE("what is true of several hatches is said once", "[cautions]") {
    auto farm = watered();
    farm.drinkers.at("bell").change_every = days(5);
    farm.hoppers.at("tube").at_most = days(40);
    auto second = farm.hatches[0];
    second.name = "May";
    second.date = second.date + days(30);
    second.chicks = birds(200);
    farm.hatches.push_back(second);
    auto const plan = sample::plan_of(farm);
    for (char const* id : {"standing-water", "stale-feed", "keeping-unstated", "drowning"}) {
        CHECK(sample::times_said(plan, id) == 1);
    }
    CHECK(fed_for_a_week(farm, "May") > 0);
}

TEST_CASE("birds out before anything is disinfected", "[cautions]") {
    CHECK(due(sample::farm_in("rations/farms/rolling.toml"), "birds-out-first"));
    CHECK_FALSE(due(watered(), "birds-out-first"));
}

TEST_CASE("small chicks and open drinkers", "[cautions]") {
    auto farm = watered();
    CHECK(due(farm, "drowning"));
    farm.hatches[0].first_age = days(20);
    CHECK_FALSE(due(farm, "drowning"));
}

TEST_CASE("vessels that do not last a night", "[cautions]") {
    auto farm = watered();
    CHECK_FALSE(due(farm, "vessel-too-small"));
    farm.hatches[0].drinkers = 1;
    farm.drinkers.at("bell").displaced = litres(2.5);
    CHECK(states(farm, "vessel-too-small", {{"form", "water"}}));
}

TEST_CASE("the date of a small vessel's caution is the first short fill's, its time the shortest", "[cautions]") {
    auto farm = watered();
    farm.hatches[0].drinkers = 1;
    farm.drinkers.at("bell").volume = litres(2.5);
    auto const plan = sample::plan_of(farm);
    auto const& fills = plan.hatches.at(0).drinkers()->fills;
    // it does not last from the evening's chore to the morning's
    auto const first_short = std::find_if(fills.begin(), fills.end(), [](auto const& fill) {
        return fill.lasts.p05 && in_days(*fill.lasts.p05) * 24 < 13 && fill.at.iso().ends_with("T18:00");
    });
    REQUIRE(first_short != fills.end());
    CHECK(first_short != fills.begin());
    CHECK(states(farm, "vessel-too-small", {{"from", first_short->at}, {"count", 1.0}, {"vessel", "bell"}}));
}
