// Every sentence there is, said of some farm: no id without words, no words without an argument they need.
#include <catch2/catch.hpp>
#include <set>

#include "all_that_is_said.hpp"
#include "cropful/engine/learn.hpp"
#include "reports/caution_words.hpp"

using namespace cropful;
using namespace cropful::quantities;
using domain::Deed;
using sample::Notes;

namespace {

domain::Farm meadow() { return sample::farm_from(sample::bobwhites()); }

void say_of_feeds(Notes& notes) {
    auto farm = meadow();
    farm.feeds.at("starter").label["protein"].minimum = 24;
    farm.feeds.at("grower").label = {{"calcium", {2.5, 3.5}}, {"selenium", {5.1, {}}}, {"salt", {0.2, 0.89}}};
    notes.plan(farm);
    farm.feeds.at("starter").label["salt"] = {0.2, 0.9};
    farm.feeds.at("grower").label = {{"sodium", {0.15, 0.36}}};
    farm.feeds.at("grower").keeps = days(56);
    farm.feeds.at("grower").form.reset();
    farm.hatches[0].laying_from = days(3);
    farm.warmth = Temperature::celsius(33);
    notes.plan(farm, {}, engine::NeedScale::by_energy);
}

void say_of_kinds(Notes& notes) {
    for (std::string const& kind : notes.reader().kinds()) {
        auto farm = meadow();
        farm.hatches[0].kind = kind;
        farm.warmth.reset();
        farm.hoppers.at("tube").at_most = days(40);
        notes.plan(farm);
    }
    auto farm = meadow();
    farm.hatches[0].laying_from = days(60);
    farm.hatches[0].lays = 0.5;
    farm.hatches[0].chicks.reset();
    farm.hatches[0].eggs = 300;
    farm.hatches[0].kind = "coturnix";
    notes.season(farm);
    farm.hatches[0].hatch_rate = 0.7;
    notes.sheet(farm);
    farm = meadow();
    farm.hoppers.at("tube").at_most = days(40);
    for (int i = 1; i < 5; ++i) {
        farm.hatches.push_back(farm.hatches[0]);
        farm.hatches.back().name += std::to_string(i);
    }
    notes.plan(farm);
}

void say_of_drugs_in_feed(Notes& notes) {
    for (char const* drug : {"snake oil", "salinomycin", "monensin", "monensine", "coumaphos", "bacitracin zinc"}) {
        auto farm = sample::medicated(drug, 50);
        notes.plan(farm);
        farm.hatches[0].laying_from = days(100);
        farm.feeds.at("grower").medicated->withdrawal = days(5);
        farm.feeds.at("grower").medicated->eggs_withdrawal = days(9);
        notes.plan(farm);
        farm.hatches[0].until = days(200);
        farm.hatches[0].feeding.push_back({"starter", days(90)});
        notes.plan(farm);
    }
}

void say_of_drugs_in_water(Notes& notes) {
    for (char const* drug : {"", "snake oil", "Tetracycline", "a drug banned off label", "amprolium"}) {
        auto farm = sample::with_supplement("Bacitracin MD soluble");
        farm.supplements.at("tonic").drug = drug;
        farm.feeds.at("starter").medicated = domain::Medication{"amprolium", kilograms(0.159), days(0)};
        farm.hatches[0].laying_from = days(10);
        notes.plan(farm);
        farm.supplements.at("tonic").from = days(20);
        farm.hatches[0].laying_from = days(10);
        notes.plan(farm);
    }
    auto farm = sample::with_supplement("tonic");
    farm.feeds.at("starter").medicated = domain::Medication{"amprolium", kilograms(0.159), days(0)};
    notes.plan(farm);
}

void say_of_water(Notes& notes) {
    auto farm = sample::with_supplement("Vinegar and vitamins", "10 g per L");
    auto& given = farm.supplements.at("tonic");
    given.keeps = days(0.5);
    for (double const sodium : {0.006, 0.098, 0.0984}) {
        given.sodium = sodium;
        notes.plan(farm);
    }
    given.keeps.reset();
    given.days_long = 28;
    given.rate = parse_rate("4 oz per 128 gal");
    given.stock = domain::Stock{parse_rate("4 mL per L"), {128}, litres(0.001), {}};
    given.rate = parse_rate("4 mL per L");
    notes.plan(farm);
    given.stock->tank = litres(20);
    given.stock->keeps = days(0.3);
    notes.plan(farm);
    given.rate = parse_rate("4 oz per 128 gal");
    given.stock = domain::Stock{parse_rate("0.5 lb/gal"), {128}};
    farm.drinkers.at("bell").change_every.reset();
    notes.plan(farm);
    farm.hatches[0].drinkers = 1;
    farm.drinkers.at("bell").displaced = litres(2.5);
    farm.hoppers.at("tube").volume = litres(1);
    farm.hatches[0].hoppers = 1;
    notes.plan(farm);
}

void say_of_wells(Notes& notes) {
    auto farm = sample::with_supplement("Salts", "1 g per L");
    auto const content = [](double milligrams) { return kilograms_per_litre(milligrams * 1e-6); };
    farm.hatches[0].kind = "coturnix";
    farm.feeds.at("starter").label["sodium"] = {0.18, {}};
    farm.water = domain::WaterReport{.found = {{"hardness", content(300)}, {"sulfate", content(1001)}},
                                     .conductivity = Conductivity::microsiemens_per_centimetre(8000),
                                     .nitrate_n = content(11),
                                     .ph = 5.9,
                                     .sampled = farm.hatches[0].date + days(-500),
                                     .softened = true};
    farm.supplements.at("tonic").sodium = 0.5;
    notes.plan(farm);
    farm.water->found = {{"sodium", content(700)}};
    farm.supplements.at("tonic").sodium.reset();
    notes.plan(farm);
    farm.water->sampled = farm.hatches[0].date + days(1);
    notes.plan(farm);
    notes.chlorine();
    notes.cautions.push_back(engine::by_weight_caution(farm.supplements.at("tonic")));
}

void say_of_brooders(Notes& notes) {
    auto farm = sample::farm_in("rations/farms/rolling.toml");
    notes.season(farm);
    auto& [key, brooder] = *farm.brooders.begin();
    brooder.count = 1;
    brooder.rest.reset();
    farm.hatches.resize(3, farm.hatches[0]);
    for (std::size_t i = 0; i < 3; ++i) farm.hatches[i].brooder = key;
    farm.hatches[1].date = farm.hatches[2].date = farm.hatches[0].date + brooder.until;
    notes.season(farm);
    notes.plan(farm);
    brooder.count = 1;
    brooder.shared = true;
    brooder.holds = {{days(0), birds(10'000)}};
    farm.hatches[1].date = farm.hatches[0].date + days(1);
    notes.season(farm);
}

void say_of_absences(Notes& notes) {
    auto farm = sample::with_supplement("tonic");
    notes.away(farm, 0, 10);
    farm.supplements.at("tonic").days_long = 60;
    notes.away(farm, 38, 20);
    farm.supplements.at("tonic").keeps.reset();
    farm.drinkers.at("bell").change_every.reset();
    notes.away(farm, 38, 20);
}

void say_of_diaries(Notes& notes) {
    auto const farm = meadow();
    auto const& hatch = farm.hatches[0];
    auto const entry = [&](double age, Deed deed, domain::Amount amount) {
        return domain::Entry{hatch.date + days(age), hatch.name, deed, amount, ""};
    };
    domain::Diary diary{entry(1, Deed::topped_up, kilograms(1)),   entry(1, Deed::topped_up, litres(1)),
                        entry(2, Deed::thrown_out, kilograms(50)), entry(2, Deed::thrown_out, litres(50)),
                        entry(3, Deed::topped_up, kilograms(4)),   entry(3, Deed::topped_up, litres(4)),
                        entry(5, Deed::topped_up, kilograms(4)),   entry(55, Deed::moved_out, birds(10)),
                        entry(60, Deed::counted, birds(60)),       entry(70, Deed::moved_out, birds(59))};
    diary.push_back(diary.back());
    diary.back().hatch = "another";
    diary.push_back(entry(-300, Deed::died, birds(1)));
    notes.plan(farm, diary);
    notes.plan(farm, {entry(50, Deed::moved_out, birds(58))});
    notes.plan(farm, {entry(40, Deed::counted, birds(20))});
    engine::Window now{hatch.date + days(40), {}};
    now.now = now.from;
    notes.plan(farm, {entry(1, Deed::topped_up, kilograms(1))}, engine::NeedScale::as_printed, now);
}

void say_of_shopping(Notes& notes) {
    notes.trips(sample::farm_in("rations/farms/trips.toml"));
    auto farm = meadow();
    farm.feeds.at("starter").spare = kilograms(1);
    notes.trips(farm);
    farm.store.emplace();
    farm.store->lead = days(2);
    farm.feeds.at("starter").on_hand = kilograms(0);
    notes.trips(farm);
    std::chrono::weekday const first(std::chrono::sys_days(farm.hatches[0].date.date()));
    farm.store->trips = {first + std::chrono::days(1)};
    notes.trips(farm);
}

void say_of_mixes(Notes& notes) {
    std::vector<domain::Ingredient> use;
    for (auto one : notes.reader().ingredients()) {
        bool const wanted =
            one.key == "corn_yellow" || one.key == "sbm_44" || one.key == "limestone" || one.key == "salt";
        one.price = money_per_kilogram(1);
        if (wanted) use.push_back(one);
    }
    use.push_back(sample::ingredient("stone", 1, {{"calcium", 38}}));
    notes.blend(use, {}, 5);
    for (auto const scale : {engine::NeedScale::as_printed, engine::NeedScale::by_energy}) {
        for (char const* kind : {"bobwhite", "coturnix", "pheasant"}) notes.blend(use, kind, 5, scale);
    }
    use.front().medicated = true;
    notes.blend(use, {}, 5);
}

Notes all_notes() {
    Notes notes;
    say_of_feeds(notes);
    say_of_kinds(notes);
    say_of_drugs_in_feed(notes);
    say_of_drugs_in_water(notes);
    say_of_water(notes);
    say_of_wells(notes);
    say_of_brooders(notes);
    say_of_absences(notes);
    say_of_diaries(notes);
    say_of_shopping(notes);
    say_of_mixes(notes);
    notes.away(sample::farm_in("rations/farms/larkmead.toml"), 50, 5);
    for (char const* name : {"backyard", "saltgrass", "larkmead"}) {
        notes.plan(sample::farm_in("rations/farms/" + std::string(name) + ".toml"));
    }
    return notes;
}

std::string key_of(std::string const& id, domain::Arguments const& with) {
    auto const form = with.find("form");
    return form == with.end() ? id : id + '/' + std::get<std::string>(form->second);
}

/// Sentences that stand under no caution or assumption of `all`.
template <class All>
std::vector<std::string> unsaid(reports::Sentences const& sentences, All const& all) {
    std::set<std::string> said;
    for (auto const& one : all) said.insert(key_of(one.id, one.with));
    std::vector<std::string> missing;
    for (auto const& [key, text] : sentences) {
        if (!said.contains(std::string(key))) missing.emplace_back(key);
    }
    return missing;
}

bool is_sound(std::string const& text) {
    return !text.empty() && text.find_first_of("{}<>") == std::string::npos && text.find("  ") == std::string::npos;
}

}  // namespace

TEST_CASE("every sentence is said of some farm, and all that is said has words", "[reports][words]") {
    Notes const notes = all_notes();
    for (Measures const measures : {Measures::us, Measures::metric, Measures::uk}) {
        for (auto const& line : reports::caution_lines(notes.cautions, measures)) {
            CHECKED_ELSE(is_sound(line.text)) FAIL_CHECK(line.id << ": " << line.text);
        }
        for (auto const& line : reports::assumption_lines(notes.assumptions, measures)) {
            CHECKED_ELSE(is_sound(line.text)) FAIL_CHECK(line.id << ": " << line.text);
        }
    }
    CHECK(unsaid(reports::caution_sentences(), notes.cautions) == std::vector<std::string>{});
    CHECK(unsaid(reports::assumption_sentences(), notes.assumptions) == std::vector<std::string>{});
}
