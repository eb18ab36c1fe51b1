#include "cropful/readers/farm.hpp"

#include <catch2/catch.hpp>
#include <numbers>

#include "faults.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using namespace cropful::domain;
using Catch::Contains;
using Catch::WithinRel;

namespace {

std::string const head = "[farm]\nname = \"F\"\n";
std::string const feed = "[feed.starter]\nprotein = \"24 %\"\n";
std::string const hatch =
    "[[hatch]]\nkind = \"bobwhite\"\ndate = 2027-04-05\nchicks = 90\n"
    "feeding = [{ feed = \"starter\", from = \"0 d\" }]\nuntil = \"6 wk\"\n";

Farm farm(std::string const& more_feed = "", std::string const& more_hatch = "", std::string const& tables = "") {
    return sample::farm_from(head + feed + more_feed + tables + hatch + more_hatch);
}

std::string fault(std::string const& more_feed, std::string const& more_hatch = "", std::string const& tables = "") {
    return sample::fault_of([&] { farm(more_feed, more_hatch, tables); });
}

double litres_of(std::string const& parts) {
    return in_litres(farm("", "", "[hopper.h]\nparts = [" + parts + "]\n").hoppers.at("h").volume);
}

}  // namespace

TEST_CASE("what is not stated stays empty", "[readers]") {
    Farm const f = farm();
    CHECK(f.measures == Measures::us);
    CHECK(f.currency == "USD");
    CHECK_FALSE(f.warmth);
    Feed const& starter = f.feeds.at("starter");
    CHECK(starter.title == "starter");
    CHECK_THAT(*starter.label.at("protein").minimum, WithinRel(24.0, 1e-15));
    CHECK_FALSE(starter.energy);
    CHECK_FALSE(starter.form);
    CHECK_FALSE(starter.bag);
    CHECK_FALSE(starter.price);
    CHECK(starter.label.size() == 1);
    Hatch const& h = f.hatches.at(0);
    CHECK(h.name == "hatch 1");
    CHECK_FALSE(h.hopper);
    CHECK(h.hoppers == 1);
    CHECK_FALSE(h.eggs);
    CHECK(h.removed.empty());
}

TEST_CASE("one label level is a minimum, two are minimum and maximum", "[readers]") {
    Feed const f = farm("calcium = [\"0.7 %\", \"1.2 %\"]\nlysine = \"1.3 %\"\n").feeds.at("starter");
    CHECK_THAT(f.label.at("calcium").minimum.value(), WithinRel(0.7, 1e-12));
    CHECK_THAT(f.label.at("calcium").maximum.value(), WithinRel(1.2, 1e-12));
    CHECK_THAT(f.label.at("lysine").minimum.value(), WithinRel(1.3, 1e-12));
    CHECK_FALSE(f.label.at("lysine").maximum);
    CHECK(f.label.size() == 3);
    CHECK_THAT(fault("calcium = [\"1.2 %\", \"0.7 %\"]\n"), Contains("5: feed.starter.calcium:"));
}

TEST_CASE("of fibre a label states the most, under either spelling", "[readers]") {
    for (char const* key : {"fibre", "fiber"}) {
        Feed const f = farm(std::string(key) + " = \"5 %\"\n").feeds.at("starter");
        CHECK_FALSE(f.label.at("fibre").minimum);
        CHECK_THAT(f.label.at("fibre").maximum.value(), WithinRel(5.0, 1e-12));
        Feed const two = farm(std::string(key) + " = [\"2 %\", \"5 %\"]\n").feeds.at("starter");
        CHECK_THAT(two.label.at("fibre").minimum.value(), WithinRel(2.0, 1e-12));
        CHECK_THAT(two.label.at("fibre").maximum.value(), WithinRel(5.0, 1e-12));
    }
}

// 0.0175 % of a short ton, 2,000 lb of 0.45359237 kg (NIST HB 44), is 158.757 g.
TEST_CASE("a drug may be stated as a share of the feed", "[readers]") {
    for (char const* level : {"0.0175 %", "175 mg/kg", "175 ppm"}) {
        Feed const f =
            farm("medicated = { drug = \"amprolium\", level = \"" + std::string(level) + "\", withdrawal = \"0 d\" }\n")
                .feeds.at("starter");
        CHECK_THAT(in_grams(f.medicated.value().per_short_ton.value()), WithinRel(158.7573295, 1e-9));
    }
}

// 1 short ton = 907.18474 kg (NIST HB 44), so 175 g in a tonne are 175 x 0.90718474 = 158.7573295 g in a short ton.
TEST_CASE("a drug may be stated by the tonne", "[readers]") {
    auto const medicine = [](std::string const& level) {
        return "medicated = { drug = \"amprolium\", " + level + ", withdrawal = \"0 d\" }\n";
    };
    Feed const f = farm(medicine("per_tonne = \"175 g\"")).feeds.at("starter");
    CHECK_THAT(in_grams(f.medicated.value().per_short_ton.value()), WithinRel(158.7573295, 1e-9));
    std::string const alone = "one of per_short_ton, per_tonne and level alone";
    CHECK_THAT(fault(medicine("per_tonne = \"9 g\", per_short_ton = \"9 g\"")), Contains(alone));
    CHECK_THAT(fault(medicine("per_tonne = \"9 g\", level = \"0.01 %\"")), Contains(alone));
    CHECK_THAT(fault(medicine("level = \"0.01 %\", per_short_ton = \"9 g\"")), Contains(alone));
    CHECK_THAT(fault(medicine("per_tonne = 175")), Contains("the drug in a tonne of feed, such as \"175 g\""));
}

TEST_CASE("withdrawals of eggs, of a feed and of a supplement", "[readers]") {
    std::string const medicine = "medicated = { drug = \"x\", withdrawal = \"3 d\", eggs_withdrawal = \"10 d\" }\n";
    std::string const given =
        "[supplement.s]\nrate = \"1 tsp per gal\"\nwithdrawal = \"2 d\"\neggs_withdrawal = \"5 d\"\n";
    Farm const f = farm(medicine + given);
    CHECK(in_days(f.feeds.at("starter").medicated->eggs_withdrawal.value()) == 10);
    CHECK(in_days(f.supplements.at("s").withdrawal.value()) == 2);
    CHECK(in_days(f.supplements.at("s").eggs_withdrawal.value()) == 5);
    CHECK_FALSE(
        farm("medicated = { drug = \"x\", withdrawal = \"3 d\" }\n").feeds.at("starter").medicated->eggs_withdrawal);
}

TEST_CASE("a date may have minutes without seconds", "[readers]") {
    std::string const text =
        "[farm]\nname = \"F\"\n[feed.a]\nprotein = \"24 %\"\n[[hatch]]\nkind = \"bobwhite\"\n"
        "date = 2027-04-05T14:30\nchicks = 9\nfeeding = [{ feed = \"a\", from = \"0 d\" }]\n"
        "until = \"6 wk\"\n";
    CHECK(sample::farm_from(text).hatches.front().date.iso() == "2027-04-05T14:30");
}

TEST_CASE("a medicated feed says drug, level and withdrawal", "[readers]") {
    Feed const f = farm("medicated = { drug = \"monensin\", per_short_ton = \"73 g\", withdrawal = \"3 d\" }\n")
                       .feeds.at("starter");
    REQUIRE(f.medicated);
    CHECK(f.medicated->drug == "monensin");
    CHECK_THAT(in_grams(f.medicated->per_short_ton.value()), WithinRel(73.0, 1e-12));
    CHECK(in_days(f.medicated->withdrawal) == 3);
}

// 420 a tonne is 0.42 a kg: 22.6796185 kg (50 lb) cost 9.52543977, half a tonne 210.
TEST_CASE("feed sold by weight: in bags, in lots, loose", "[readers]") {
    Feed const bags = farm("bag = \"50 lb\"\nprice = \"420 per tonne\"\n").feeds.at("starter");
    CHECK_THAT(in_money(bags.price.value()), WithinRel(9.52543977, 1e-9));
    CHECK_FALSE(bags.in_lots);
    Feed const lots = farm("lot = \"0.5 tonne\"\nprice = \"420 per tonne\"\n").feeds.at("starter");
    CHECK(lots.in_lots);
    CHECK_THAT(in_kilograms(lots.bag.value()), WithinRel(500.0, 1e-12));
    CHECK_THAT(in_money(lots.price.value()), WithinRel(210.0, 1e-12));
    Feed const loose = farm("price = \"420 per tonne\"\n").feeds.at("starter");
    CHECK_FALSE(loose.bag);
    CHECK_FALSE(loose.price);
    CHECK_THAT(in_money_per_kilogram(loose.by_weight.value()), WithinRel(0.42, 1e-12));
    for (Feed const& feed : {bags, lots, loose})
        CHECK_THAT(in_money_per_kilogram(price_by_weight(feed).value()), WithinRel(0.42, 1e-12));
    CHECK_FALSE(farm("lot = \"0.5 tonne\"\n").feeds.at("starter").price);
    CHECK_THAT(fault("lot = \"0.5 tonne\"\nbag = \"50 lb\"\n"), Contains("either a bag or a lot"));
    CHECK_THAT(fault("lot = \"0.5 tonne\"\nprice = 210\n"), Contains("a price by weight beside lot"));
    CHECK_THAT(fault("price = 9.5\n"), Contains("a bag beside it") && Contains("420 per tonne"));
    CHECK_THAT(fault("price = \"420 per gal\"\n"), Contains("gal is a volume"));
    CHECK_THAT(fault("lot = \"9 kg\"\nbags = [{ size = \"9 kg\", price = 9 }]\n"), Contains("or bags, not both"));
}

TEST_CASE("the units are known before anything else is read, wherever they stand", "[readers]") {
    std::string const uk = "[feed.starter]\nprotein = \"24 %\"\n[drinker.d]\nvolume = \"1 gal\"\n" + hatch +
                           "[farm]\nname = \"F\"\nunits = \"uk\"\n";
    CHECK_THROWS_WITH(sample::farm_from(uk), Contains("drinker.d.volume") && Contains("imp gal"));
}

TEST_CASE("parts of a hopper sum to its volume", "[readers]") {
    using std::numbers::pi;
    CHECK_THAT(litres_of("{ shape = \"cylinder\", diameter = \"20 cm\", height = \"30 cm\" }"),
               WithinRel(pi * 3.0, 1e-12));  // pi 10^2 30 cm3
    CHECK_THAT(litres_of("{ shape = \"box\", length = \"50 cm\", width = \"20 cm\", height = \"10 cm\" }"),
               WithinRel(10.0, 1e-12));
    // pi h (R2 + R r + r2) / 3 with R = 10, r = 5, h = 12 cm
    CHECK_THAT(litres_of("{ shape = \"frustum\", top = \"20 cm\", bottom = \"10 cm\", height = \"12 cm\" }"),
               WithinRel(pi * 0.7, 1e-12));
    CHECK_THAT(litres_of("{ shape = \"cone\", top = \"20 cm\", bottom = \"0 cm\", height = \"30 cm\" }"),
               WithinRel(pi, 1e-12));
    CHECK_THAT(litres_of("{ shape = \"cone frustum\", top = \"20 cm\", bottom = \"20 cm\", height = \"30 cm\" }, "
                         "{ shape = \"cylinder\", diameter = \"20 cm\", height = \"30 cm\" }"),
               WithinRel(pi * 6.0, 1e-12));
}

TEST_CASE("a drinker keeps what its trough needs and what stones take", "[readers]") {
    Drinker const d = farm("", "",
                           "[drinker.d]\nvolume = \"4 L\"\ndisplaced = \"250 mL\"\nleast = \"500 mL\"\n"
                           "change_every = \"2 d\"\nspill = \"3 %\"\n")
                          .drinkers.at("d");
    CHECK_THAT(in_litres(d.displaced), WithinRel(0.25, 1e-12));
    CHECK_THAT(in_litres(d.least), WithinRel(0.5, 1e-12));
    CHECK(in_days(d.change_every.value()) == 2);
    CHECK_THAT(d.spill, WithinRel(0.03, 1e-12));
    CHECK_THAT(fault("", "", "[drinker.d]\nvolume = \"1 L\"\ndisplaced = \"1 L\"\n"), Contains("drinker.d.displaced"));
}

TEST_CASE("a pack is a weight or a measure; a stock stands for a rate", "[readers]") {
    auto const tonic = [](std::string const& more) {
        return farm("", "", "[supplement.t]\ndays = 5\n" + more).supplements.at("t");
    };
    CHECK(tonic("rate = \"1 tsp per gal\"\npack = \"8 oz\"\n").pack.has_value());
    CHECK(tonic("rate = \"1 tsp per gal\"\npack = \"16 fl oz\"\n").pack_volume.has_value());
    Supplement const s = tonic("stock = { strength = \"4 oz per gal\", proportioner = \"1:128\" }\n");
    REQUIRE(s.stock);
    CHECK(s.stock->proportioner.parts == 128);
    CHECK_THAT(in_grams_per_litre(*s.stock->strength->by_weight()), WithinRel(4 * 28.349523125 / 3.785411784, 1e-12));
    CHECK_FALSE(s.rate);
    CHECK_THAT(fault("", "", "[supplement.t]\ndays = 5\n"), Contains("supplement.t.rate: found nothing"));
}

TEST_CASE("feeding and removals are put in order of age", "[readers]") {
    std::string text = head + feed + "[feed.grower]\nprotein = \"20 %\"\n" + hatch +
                       "removed = [{ at = \"5 wk\", birds = 3 }, { at = \"4 wk\", birds = 2 }]\n";
    std::string const only = "[{ feed = \"starter\", from = \"0 d\" }]";
    text.replace(text.find(only), only.size(),
                 "[{ feed = \"grower\", from = \"3 wk\" }, { feed = \"starter\", from = \"0 d\" }]");
    Hatch const h = sample::farm_from(text).hatches.at(0);
    CHECK(h.feeding.at(0).feed == "starter");
    CHECK(h.feeding.at(1).feed == "grower");
    CHECK(in_days(h.removed.at(0).at) == 28);
    CHECK(in_birds(h.removed.at(1).birds) == 3);
}

TEST_CASE("hatches come in order of date, those of one day as written", "[readers]") {
    auto const one = [](std::string const& name, std::string const& date) {
        std::string text = hatch + "name = \"" + name + "\"\n";
        return text.replace(text.find("2027-04-05"), 10, date);
    };
    auto const hatches =
        sample::farm_from(head + feed + one("c", "2027-05-01") + one("a", "2027-04-01") + one("b", "2027-04-01"))
            .hatches;
    CHECK(hatches.at(0).name == "a");
    CHECK(hatches.at(1).name == "b");
    CHECK(hatches.at(2).name == "c");
}

TEST_CASE("eggs stand for chicks, with a hatch rate or without", "[readers]") {
    std::string text = head + feed + hatch;
    text.replace(text.find("chicks = 90"), 11, "eggs = 140\nhatch_rate = \"75 %\"");
    Hatch const h = sample::farm_from(text).hatches.at(0);
    CHECK_FALSE(h.chicks);
    CHECK(h.eggs == 140.0);
    CHECK_THAT(h.hatch_rate.value(), WithinRel(0.75, 1e-12));
}

TEST_CASE("a kind may be called by any of its names", "[readers]") {
    std::string text = head + feed + hatch;
    text.replace(text.find("\"bobwhite\""), 10, "\"Northern Bobwhite\"");
    CHECK(sample::farm_from(text).hatches.at(0).kind == "bobwhite");
}

TEST_CASE("a vessel without its hatch key, or of no such name, is a fault", "[readers]") {
    CHECK_THAT(fault("", "hoppers = 2\n"), Contains("hatch.1.hoppers"));
    CHECK_THAT(fault("", "hopper = \"tueb\"\n", "[hopper.tube]\nvolume = \"3 gal\"\n"), Contains("perhaps \"tube\""));
    CHECK_THAT(fault("", "hopper = \"tube\"\n"), Contains("a table [hopper.tube]"));
}

TEST_CASE("birds that are there already are so many, so old, on a day", "[readers]") {
    std::string text = readers::starter_farm();
    std::string const date = "date = 2027-04-05 ", chicks = "chicks = 90 ";
    text.replace(text.find(date), date.size(), "birds = 60\nage = \"10 wk\" ");
    text.replace(text.find(chicks), chicks.size(), "on = 2027-04-05 ");
    auto const hatch = sample::farm_from(text).hatches.at(0);
    CHECK(in_birds(*hatch.chicks) == 60);
    CHECK(hatch.first_age == days(70));
    CHECK(hatch.date.iso_date() == "2027-01-25");  // 70 days before 5 April
    auto const plan = sample::plan_of(text);
    CHECK(plan.hatches.at(0).feeds.size() == 1);  // the grower, from 6 wk
    CHECK(plan.hatches.at(0).feeds.at(0).from == days(70));
}

TEST_CASE("the farm file for a newcomer and the demonstrations are accepted as they are", "[readers]") {
    Farm const f = sample::farm_from(readers::starter_farm());
    CHECK(f.feeds.size() == 2);
    CHECK(in_birds(f.hatches.at(0).chicks.value()) == 90);
    CHECK(f.hatches.at(0).kind == "bobwhite");
    CHECK(sample::farm_in("rations/farms/backyard.toml").measures == Measures::metric);
    CHECK(sample::farm_in("rations/farms/saltgrass.toml").hatches.size() == 4);
}

TEST_CASE("the newcomer's file stays sound with its notes turned into keys", "[readers]") {
    auto const measures = GENERATE(Measures::us, Measures::metric, Measures::uk);
    std::string text = readers::starter_farm(measures);
    CHECK(text.find('<') == std::string::npos);
    CHECK(text.find('|') == std::string::npos);
    for (std::string const key :
         {"warmth", "on_hand",     "spare",     "keeps",   "energy", "density", "calcium",     "medicated",
          "fill",   "extra_waste", "displaced", "least",   "spill",  "removed", "laying_from", "[supplement.tonic]",
          "rate",   "spoon",       "fill_for",  "at_most", "sodium", "pack",    "courses",     "scale"}) {
        auto const at = text.find("\n# " + key + (key[0] == '[' ? "\n" : " ="));
        REQUIRE(at != std::string::npos);
        text.erase(at + 1, 2);
    }
    Farm const f = sample::farm_from(text);
    CHECK(f.hatches.at(0).courses.at(0).supplement == "tonic");
    CHECK(f.hatches.at(0).courses.at(0).days_long == 5);
    CHECK(f.measures == measures);
    // round figures of each system, near to each other
    double const bag = measures == Measures::us ? 50 * 0.45359237 : 25;
    CHECK_THAT(in_kilograms(*f.feeds.at("starter").bag), WithinRel(bag, 1e-12));
    CHECK_THAT(in_litres(f.hoppers.at("tube").volume), WithinRel(12.0, 0.06));
}
