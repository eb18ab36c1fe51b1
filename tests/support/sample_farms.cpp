#include "sample_farms.hpp"

#include "cropful/store/files.hpp"

namespace cropful::sample {

domain::Farm farm_from(std::string const& text) {
    return readers::parse_farm(text, "test.toml", readers::RationsReader());
}

domain::Farm farm_in(std::string const& path) {
    return readers::parse_farm(store::read_text(path), path, readers::RationsReader());
}

engine::Plan plan_of(domain::Farm const& farm, engine::Window window) {
    readers::RationsReader const reader;
    return engine::make_plan(farm, reader.load(farm), window);
}

rations::Rations without_spread(domain::Farm const& farm) {
    rations::Rations rations = readers::RationsReader().load(farm);
    auto const flat = [](curves::Curve const& curve) {
        auto rows = curve.rows();
        for (curves::Row& row : rows) row.low = row.high = row.central;
        return curves::Curve(rows);
    };
    for (auto& [key, kind] : rations.kinds) {
        kind.growing.curve = flat(kind.growing.curve);
        kind.mortality.curve = flat(kind.mortality.curve);
        kind.water.ratio[0] = kind.water.ratio[2] = kind.water.ratio[1];
        if (kind.laying) kind.laying->rate[0] = kind.laying->rate[2] = kind.laying->rate[1];
    }
    return rations;
}

engine::Plan plan_of(std::string const& text, engine::Window window) { return plan_of(farm_from(text), window); }

std::string bobwhites() {
    return R"([farm]
name = "Test meadow"
units = "us"
currency = "USD"
warmth = "86 degF"

[feed.starter]
title = "starter crumble"
protein = "26 %"
energy = "2900 kcal/kg"
density = "38 lb/ft3"
bag = "50 lb"
price = 27.50
on_hand = "30 lb"

[feed.grower]
title = "grower crumble"
protein = "20 %"
form = "crumble"
bag = "50 lb"
price = 24.00

[hopper.tube]
volume = "3 gal"
stays_behind = "5 %"
extra_waste = "2 %"

[drinker.bell]
volume = "1 gal"
displaced = "8 fl oz"
change_every = "2 d"
spill = "3 %"

[[hatch]]
name = "April"
kind = "bobwhite"
date = 2027-04-05
chicks = 240
feeding = [{ feed = "starter", from = "0 d" }, { feed = "grower", from = "6 wk" }]
until = "16 wk"
removed = [{ at = "8 wk", birds = 60 }]
hopper = "tube"
hoppers = 3
drinker = "bell"
drinkers = 6
)";
}

// They drink 2 mL for each gram.
domain::Farm round_figures() {
    using namespace quantities;
    auto farm = farm_from(bobwhites());
    farm.warmth.reset();
    for (auto& [key, feed] : farm.feeds) {
        feed.energy.reset();
        feed.bag = kilograms(40);
        feed.on_hand = kilograms(0);
    }
    farm.feeds.at("starter").density = kilograms_per_litre(0.5);
    farm.feeds.at("starter").price = money(20);
    farm.feeds.at("grower").density = kilograms_per_litre(0.6);
    farm.feeds.at("grower").price = money(30);
    farm.hoppers.at("tube") = {.key = "tube", .volume = litres(10)};
    farm.drinkers.at("bell") = {.key = "bell", .volume = litres(4), .change_every = {}};
    auto& hatch = farm.hatches.front();
    hatch.chicks = birds(1000 / grown_bobwhite);
    hatch.first_age = days(200);
    hatch.until = days(221);
    hatch.feeding = {{"starter", days(0)}, {"grower", days(207)}};
    hatch.removed.clear();
    hatch.hoppers = hatch.drinkers = 1;
    return farm;
}

// 50 lb = 22.6796185 kg, 30 lb = 13.6077711 kg, 3 gal = 11.356235352 L, 1 gal = 3.785411784 L,
// 8 fl oz = 236.5882365 mL; 38 lb/ft3 = 38 * 0.45359237 / 28.316846592 kg/L; 86 degF = 30 degC. NIST HB 44 App. C.
std::string bobwhites_metric() {
    std::string text = bobwhites();
    auto const replace = [&text](std::string const& from, std::string const& to) {
        for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
            text.replace(at, from.size(), to);
        }
    };
    replace("units = \"us\"", "units = \"metric\"");
    replace("86 degF", "30 degC");
    replace("50 lb", "22.6796185 kg");
    replace("30 lb", "13607.7711 g");
    replace("3 gal", "11.356235352 L");
    replace("1 gal", "3785.411784 mL");
    replace("8 fl oz", "236.5882365 mL");
    replace("38 lb/ft3", "608.7016082104853 kg/m3");
    replace("2900 kcal/kg", "12.1336 MJ/kg");
    replace("\"6 wk\"", "\"42 d\"");
    return text;
}

}  // namespace cropful::sample
