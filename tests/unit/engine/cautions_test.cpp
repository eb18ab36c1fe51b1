// Each caution is due in one small farm and not in its twin.
#include <algorithm>
#include <catch2/catch.hpp>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

bool warns(domain::Farm const& farm, std::string const& words) {
    for (auto const& caution : sample::plan_of(farm).cautions) {
        if (caution.text.find(words) != std::string::npos) return true;
    }
    return false;
}

domain::Farm bobwhites() { return sample::farm_from(sample::bobwhites()); }

domain::Farm with_tonic(std::string const& rate) {
    auto farm = bobwhites();
    domain::Supplement tonic;
    tonic.key = tonic.title = "tonic";
    tonic.rate = parse_rate(rate);
    tonic.keeps = days(1);
    farm.supplements.emplace("tonic", tonic);
    farm.hatches[0].supplement = "tonic";
    return farm;
}

domain::Farm medicated(std::string const& drug, double grams) {
    auto farm = bobwhites();
    farm.feeds.at("grower").medicated = domain::Medication{drug, kilograms(grams / 1000), days(0)};
    return farm;
}

}  // namespace

TEST_CASE("feed below need", "[cautions]") {
    auto farm = bobwhites();
    CHECK_FALSE(warns(farm, "short by"));
    farm.feeds.at("starter").protein = 0.24;
    CHECK(warns(farm, "short by 2 points, 7.7 % of the need"));
}

TEST_CASE("layer calcium for birds that do not lay", "[cautions]") {
    // NRC (2005), from memory: 1.5 % for growing poultry; quail chicks grew less at 2 % (Edache et al.).
    auto farm = bobwhites();
    farm.feeds.at("grower").label["calcium"] = {0.7, 1.2};
    CHECK_FALSE(warns(farm, "that do not lay"));
    farm.feeds.at("grower").label["calcium"] = {2.5, 3.5};
    CHECK(warns(farm, "may hold 3.5 % calcium and is fed to bobwhite that do not lay"));
    farm.hatches[0].laying_from = days(42);
    CHECK_FALSE(warns(farm, "that do not lay"));
}

TEST_CASE("salt in feed", "[cautions]") {
    auto farm = bobwhites();
    farm.feeds.at("grower").label["salt"] = {0.2, 0.35};
    CHECK_FALSE(warns(farm, "% salt"));
    farm.feeds.at("grower").label["salt"] = {0.5, 1.0};
    CHECK(warns(farm, "may hold 1 % salt"));
}

TEST_CASE("medicated feed: danger to others, listed bird and level", "[cautions]") {
    // 21 CFR 558.355(f)(5), 2015 edition: monensin 73 g/ton for growing bobwhite quail; fatal to horses.
    CHECK(warns(medicated("monensin", 73), "horses"));
    CHECK_FALSE(warns(medicated("monensin", 73), "is the listed level"));
    CHECK(warns(medicated("Monensin", 90), "73 g is the listed level"));
    CHECK_FALSE(warns(medicated("monensin", 73), "no approval"));
    auto coturnix = medicated("monensin", 73);
    coturnix.hatches[0].kind = "coturnix";
    CHECK(warns(coturnix, "no approval of monensin"));
    CHECK(warns(medicated("snake oil", 1), "nothing could be checked"));
}

TEST_CASE("medicated feed: into lay, and within its withdrawal", "[cautions]") {
    // 21 CFR 558.550: salinomycin is not for birds laying eggs for human food.
    auto farm = medicated("salinomycin", 50);
    CHECK_FALSE(warns(farm, "fed into lay"));
    farm.hatches[0].laying_from = days(100);
    CHECK(warns(farm, "fed into lay"));
    CHECK_FALSE(warns(farm, "withdrawal of"));
    farm.feeds.at("grower").medicated->withdrawal = days(5);
    CHECK(warns(farm, "birds sold at 16 wk leave within the 5 d withdrawal"));
    CHECK(warns(farm, "birds removed at 8 wk leave within the 5 d withdrawal"));
}

TEST_CASE("amprolium beside a supplement that may hold thiamine", "[cautions]") {
    auto farm = with_tonic("1 tsp per gal");
    CHECK_FALSE(warns(farm, "thiamine"));
    farm.feeds.at("starter").medicated = domain::Medication{"amprolium", kilograms(0.159), days(0)};
    CHECK(warns(farm, "thiamine"));
}

TEST_CASE("solutions and water that stand too long", "[cautions]") {
    auto farm = with_tonic("1 tsp per gal");
    CHECK(warns(farm, "would last longer than the solution's 24 h"));
    farm.drinkers.at("bell").volume = litres(0.3);
    farm.drinkers.at("bell").displaced = litres(0.25);
    CHECK_FALSE(warns(farm, "would last longer than the solution's"));
    farm = bobwhites();
    CHECK_FALSE(warns(farm, "water goes foul"));
    farm.drinkers.at("bell").change_every.reset();
    CHECK(warns(farm, "water goes foul"));
}

TEST_CASE("sodium in the water against the guides", "[cautions]") {
    // Guide maximum 50 mg/L (ICAR e-course); 983 mg/L as 2.5 g NaCl/L: more deaths of young Japanese quail.
    auto farm = with_tonic("1 g per L");
    CHECK_FALSE(warns(farm, "mg/L sodium"));
    farm.supplements.at("tonic").sodium = 0.06;
    CHECK(warns(farm, "tonic adds 60 mg/L sodium to the water, above 50 mg/L"));
    CHECK_FALSE(warns(farm, "above 983"));
    farm.supplements.at("tonic").rate = parse_rate("20 g per L");
    CHECK(warns(farm, "above 983"));
}

TEST_CASE("ounces of what", "[cautions]") {
    CHECK(warns(with_tonic("4 oz per 128 gal"), "write fl oz"));
    CHECK_FALSE(warns(with_tonic("4 fl oz per 128 gal"), "write fl oz"));
}

TEST_CASE("small chicks and open drinkers", "[cautions]") {
    auto farm = bobwhites();
    CHECK(warns(farm, "drown"));
    farm.hatches[0].first_age = days(20);
    CHECK_FALSE(warns(farm, "drown"));
}

TEST_CASE("vessels that do not last a night", "[cautions]") {
    auto farm = bobwhites();
    CHECK_FALSE(warns(farm, "less than a night"));
    farm.hatches[0].drinkers = 1;
    farm.drinkers.at("bell").displaced = litres(2.5);
    CHECK(warns(farm, "runs dry in as little as"));
}

TEST_CASE("the date of a small vessel's caution is the first short fill's, its time the shortest", "[cautions]") {
    auto farm = bobwhites();
    farm.hatches[0].drinkers = 1;
    farm.drinkers.at("bell").volume = litres(2.5);
    auto const plan = sample::plan_of(farm);
    auto const& fills = plan.hatches.at(0).drinkers->fills;
    auto const first_short = std::find_if(
        fills.begin(), fills.end(), [](auto const& fill) { return fill.lasts.p05 && in_days(*fill.lasts.p05) < 0.5; });
    REQUIRE(first_short != fills.end());
    CHECK(first_short != fills.begin());
    CHECK(warns(farm, "from about " + first_short->at.day() + " 1 x bell"));
}

TEST_CASE("layers before any quail lays, and a barn hotter than the trials", "[cautions]") {
    auto farm = bobwhites();
    farm.hatches[0].laying_from = days(100);
    CHECK_FALSE(warns(farm, "no quail lays before"));
    farm.hatches[0].laying_from = days(3);
    CHECK(warns(farm, "laying_from is day 3, but no quail lays before about 5 weeks"));
    farm.warmth = Temperature::celsius(32);
    CHECK_FALSE(warns(farm, "hotter than the trials"));
    farm.warmth = Temperature::celsius(33);
    CHECK(warns(farm, "hotter than the trials"));
}

TEST_CASE("medicated feed near lay, and a drug written wrong", "[cautions]") {
    auto farm = medicated("salinomycin", 50);
    farm.hatches[0].until = days(200);
    farm.hatches[0].feeding.push_back({"starter", days(100)});
    farm.hatches[0].laying_from = days(130);
    CHECK_FALSE(warns(farm, "when yolks form"));
    farm.hatches[0].laying_from = days(105);
    CHECK(warns(farm, "when yolks form"));
    CHECK(warns(medicated("monensine", 73), "If monensin is meant, write it so. That drug can kill horses"));
}

TEST_CASE("feed that goes stale before it is eaten", "[cautions]") {
    auto farm = bobwhites();
    farm.feeds.at("grower").keeps = days(70);
    CHECK_FALSE(warns(farm, "several goes"));
    farm.feeds.at("grower").keeps = days(56);
    CHECK(warns(farm, "keeps 8 wk but is fed for 10 wk"));
}

TEST_CASE("a curve that rests on little says so whenever it is used", "[cautions]") {
    auto farm = bobwhites();
    CHECK_FALSE(warns(farm, "one measured total"));
    farm.hatches[0].kind = "pheasant";
    CHECK(warns(farm, "one measured total"));
}
