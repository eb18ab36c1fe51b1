// Each caution is due in one small farm and not in its twin: feeds, drugs in them, and birds.
#include <catch2/catch.hpp>

#include "cautions.hpp"

using namespace cropful;
using namespace cropful::quantities;
using sample::due;
using sample::medicated;
using sample::quotes;
using sample::states;

namespace {

domain::Farm bobwhites() { return sample::farm_from(sample::bobwhites()); }

}  // namespace

TEST_CASE("every caution has an id in kebab-case, one sort one id", "[cautions]") {
    auto farm = medicated("monensin", 90);
    farm.feeds.at("grower").label["calcium"] = {2.5, 3.5};
    auto const all = sample::plan_of(farm).cautions;
    CHECK(all.size() > 4);
    for (auto const& one : all) {
        CHECK_FALSE(one.id.empty());
        CHECK(one.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string::npos);
    }
}

TEST_CASE("feed below need", "[cautions]") {
    auto farm = bobwhites();
    CHECK_FALSE(due(farm, "below-need"));
    farm.feeds.at("starter").label["protein"].minimum = 24;
    CHECK(states(farm, "below-need", {{"short_by", 2.0}, {"of_need", domain::Share{2.0 / 26}}}));
}

TEST_CASE("layer calcium for birds that do not lay", "[cautions]") {
    // NRC (2005), from memory: 1.5 % for growing poultry; quail chicks grew less at 2 % (Edache et al.).
    auto farm = bobwhites();
    farm.feeds.at("grower").label["calcium"] = {0.7, 1.2};
    CHECK_FALSE(due(farm, "calcium-while-growing"));
    farm.feeds.at("grower").label["calcium"] = {2.5, 3.5};
    CHECK(states(farm, "calcium-while-growing", {{"most", domain::Content{"calcium", 3.5}}, {"kind", "bobwhite"}}));
    CHECK(quotes(farm, "calcium-while-growing", "limit", "3 % (pheasant and partridge chicks"));  // the highest passed
    farm.hatches[0].laying_from = days(42);
    CHECK_FALSE(due(farm, "calcium-while-growing"));
}

TEST_CASE("salt in feed, and from 0.9 % on none at all", "[cautions]") {
    // nerve signs and deaths of chicks at 0.9 to 1.2 % (poultrydvm.com, salt intoxication); wet litter from 0.4 %
    auto farm = bobwhites();
    farm.feeds.at("grower").label["salt"] = {0.2, 0.35};
    CHECK_FALSE(due(farm, "salt-feed"));
    farm.feeds.at("grower").label["salt"] = {0.2, 0.89};
    CHECK(states(farm, "salt-feed", {{"salt", domain::Content{"salt", 0.89}}}));
    CHECK_FALSE(due(farm, "salt-lethal"));
    farm.feeds.at("grower").label["salt"] = {0.2, 0.9};
    CHECK_FALSE(due(farm, "salt-feed"));
    CHECK(states(farm, "salt-lethal", {{"form", "salt"}}));
}

TEST_CASE("sodium in feed that is as much as deadly salt", "[cautions]") {
    // 0.9 % of salt is 0.9 * 0.3934 = 0.354 % sodium
    auto farm = bobwhites();
    farm.feeds.at("grower").label["sodium"] = {0.15, 0.35};
    CHECK_FALSE(due(farm, "salt-lethal"));
    farm.feeds.at("grower").label["sodium"] = {0.15, 0.36};
    CHECK(due(farm, "salt-lethal"));
}

TEST_CASE("selenium, vitamin A and vitamin D3 above their limits", "[cautions]") {
    // Ort & Latshaw: 5 mg/kg of selenium; EU 2015/724: 20,000 IU of vitamin A; EU 2017/1492: 3,200 IU of D3
    auto const [key, fits, over] = GENERATE(
        table<std::string, double, double>({{"selenium", 4.9, 5.1}, {"vit_a", 19900, 20100}, {"vit_d3", 3190, 3210}}));
    std::string const kind = GENERATE("bobwhite", "coturnix");  // one table has no need of them, the other has
    auto farm = bobwhites();
    farm.hatches[0].kind = kind;
    auto const verdict_over = [&, n = key] {
        auto const checks = sample::plan_of(farm).hatches.at(0).checks;
        return std::any_of(checks.begin(), checks.end(), [&](engine::Check const& one) {
            return one.feed == "grower" && one.nutrient == n && one.verdict == engine::Verdict::over;
        });
    };
    farm.feeds.at("grower").label[key] = {fits, {}};
    CHECK_FALSE(due(farm, "over-limit"));
    CHECK_FALSE(verdict_over());
    farm.feeds.at("grower").label[key] = {over, {}};
    CHECK(due(farm, "over-limit"));
    CHECK(verdict_over());
}

TEST_CASE("medicated feed: danger to others, listed bird and level", "[cautions]") {
    // 21 CFR 558.355(f)(5), 2015 edition: monensin 73 g/ton for growing bobwhite quail; fatal to horses.
    CHECK(quotes(medicated("monensin", 73), "drug-conditions", "danger", "horses"));
    CHECK_FALSE(due(medicated("monensin", 73), "drug-level"));
    CHECK(states(medicated("Monensin", 90), "drug-level", {{"least", parse_small_mass("73 g")}}));
    CHECK_FALSE(due(medicated("monensin", 73), "drug-approval"));
    auto coturnix = medicated("monensin", 73);
    coturnix.hatches[0].kind = "coturnix";
    CHECK(states(coturnix, "drug-approval", {{"drug", "monensin"}}));
    CHECK(states(medicated("snake oil", 1), "drug-unknown", {{"drug", "snake oil"}}));
    CHECK(states(medicated("coumaphos", 27.2), "drug-approval", {{"drug", "coumaphos"}}));
    CHECK(quotes(medicated("fenbendazole", 14.5), "drug-conditions", "conditions", "growing turkeys"));
}

TEST_CASE("one drug for several birds at their own levels", "[cautions]") {
    // 21 CFR 558.78(d)(1), 2015 edition: quail to 5 wk 5 to 20 g, growing pheasants 4 to 50 g per short ton
    auto farm = medicated("bacitracin zinc", 50);
    CHECK(states(farm, "drug-level", {{"least", parse_small_mass("5 g")}, {"most", parse_small_mass("20 g")}}));
    farm.hatches[0].kind = "pheasant";
    CHECK_FALSE(due(farm, "drug-level"));
    CHECK_FALSE(due(farm, "drug-approval"));
    CHECK_FALSE(due(farm, "drug-age"));
}

TEST_CASE("medicated feed: into lay, and within its withdrawal", "[cautions]") {
    // 21 CFR 558.550: salinomycin is not for birds laying eggs for human food; 558.355: monensin for growing bobwhites.
    auto farm = medicated("salinomycin", 50);
    CHECK_FALSE(due(farm, "drug-into-lay"));
    farm.hatches[0].laying_from = days(100);
    CHECK(states(farm, "drug-into-lay", {{"form", "into lay, not for layers"}}));
    CHECK_FALSE(due(farm, "drug-withdrawal"));
    farm.feeds.at("grower").medicated->withdrawal = days(5);
    CHECK(states(farm, "drug-withdrawal", {{"form", "sold"}, {"at", domain::Age{days(112)}}, {"withdrawal", days(5)}}));
    CHECK(states(farm, "drug-withdrawal", {{"form", "removed"}, {"at", domain::Age{days(56)}}}));
    farm.feeds.at("grower").medicated->drug = "monensin";
    CHECK(states(farm, "drug-into-lay", {{"form", "into lay, for growing birds"}}));
    CHECK_FALSE(states(farm, "drug-into-lay", {{"form", "into lay, not for layers"}}));
}

TEST_CASE("eggs laid within a withdrawal of eggs", "[cautions]") {
    // grower is fed from 6 to 16 wk (day 112) and the hatch is kept till then; eggs from day 100 on
    auto farm = medicated("salinomycin", 50);
    auto& medicine = *farm.feeds.at("grower").medicated;
    farm.hatches[0].laying_from = days(100);
    CHECK_FALSE(due(farm, "eggs-withdrawal"));
    medicine.eggs_withdrawal = days(0);
    CHECK_FALSE(due(farm, "eggs-withdrawal"));
    medicine.eggs_withdrawal = days(9);
    auto const until = [&](double age) { return farm.hatches[0].date + days(age); };
    CHECK(states(farm, "eggs-withdrawal", {{"withdrawal", days(9)}, {"drug", "salinomycin"}, {"until", until(121)}}));
    CHECK_FALSE(due(farm, "drug-withdrawal"));
    farm.hatches[0].feeding.push_back({"starter", days(90)});  // over on day 99, before the first egg
    CHECK_FALSE(due(farm, "eggs-withdrawal"));
    medicine.eggs_withdrawal = days(11);
    CHECK(states(farm, "eggs-withdrawal", {{"until", until(101)}}));
    farm.hatches[0].laying_from.reset();
    CHECK_FALSE(due(farm, "eggs-withdrawal"));
}

TEST_CASE("birds and eggs after a medicine in the water", "[cautions]") {
    auto farm = sample::with_supplement("tonic");  // on day 0
    auto& tonic = farm.supplements.at("tonic");
    tonic.from = days(108);  // kept to day 112
    CHECK_FALSE(due(farm, "drug-withdrawal"));
    tonic.withdrawal = days(3);  // over on day 112
    CHECK_FALSE(due(farm, "drug-withdrawal"));
    tonic.withdrawal = days(4);
    CHECK(states(farm, "drug-withdrawal", {{"form", "sold"}, {"feed", "tonic"}, {"withdrawal", days(4)}}));
    tonic.eggs_withdrawal = days(7);
    CHECK_FALSE(due(farm, "eggs-withdrawal"));
    farm.hatches[0].laying_from = days(60);
    CHECK(states(farm, "eggs-withdrawal", {{"product", "tonic"}, {"until", farm.hatches[0].date + days(116)}}));
}

TEST_CASE("layers before any quail lays, and a barn hotter than the trials", "[cautions]") {
    auto farm = bobwhites();
    farm.hatches[0].laying_from = days(100);
    CHECK_FALSE(due(farm, "early-lay"));
    farm.hatches[0].laying_from = days(3);
    CHECK(states(farm, "early-lay", {{"lay", domain::Age{days(3)}}}));
    farm.warmth = Temperature::celsius(32);
    CHECK_FALSE(due(farm, "heat"));
    farm.warmth = Temperature::celsius(33);
    CHECK(due(farm, "heat"));
}

TEST_CASE("medicated feed near lay, and a drug written wrong", "[cautions]") {
    auto farm = medicated("salinomycin", 50);
    farm.hatches[0].until = days(200);
    farm.hatches[0].feeding.push_back({"starter", days(100)});
    farm.hatches[0].laying_from = days(130);
    CHECK_FALSE(due(farm, "drug-into-lay"));
    farm.hatches[0].laying_from = days(105);
    CHECK(states(farm, "drug-into-lay", {{"form", "near lay, not for layers"}}));
    CHECK(states(medicated("monensine", 73), "drug-unknown", {{"meant", "monensin"}}));
    CHECK(quotes(medicated("monensine", 73), "drug-unknown", "danger", "horses"));
}

TEST_CASE("feed that goes stale before it is eaten", "[cautions]") {
    auto farm = bobwhites();
    farm.feeds.at("grower").keeps = days(70);
    CHECK_FALSE(due(farm, "past-keeping"));
    farm.feeds.at("grower").keeps = days(56);
    CHECK(states(farm, "past-keeping", {{"keeps", days(56)}, {"fed_for", days(70)}}));
}

TEST_CASE("feed bought for more than 8 wk of which nobody says how long it keeps", "[cautions]") {
    auto farm = bobwhites();  // starter for 6 wk, grower for 10
    CHECK(quotes(farm, "keeping-unstated", "feeds", "grower crumble"));
    CHECK_FALSE(quotes(farm, "keeping-unstated", "feeds", "starter crumble"));
    farm.hatches[0].until = days(98);
    CHECK_FALSE(due(farm, "keeping-unstated"));
    farm.hatches[0].until = days(112);
    farm.feeds.at("grower").keeps = days(90);
    CHECK_FALSE(due(farm, "keeping-unstated"));
}

TEST_CASE("a curve that rests on little says so whenever it is used", "[cautions]") {
    auto farm = bobwhites();
    CHECK_FALSE(due(farm, "kind-curve"));
    farm.hatches[0].kind = "pheasant";
    CHECK(due(farm, "kind-curve"));
}
