#include "cropful/readers/farm.hpp"

namespace cropful::readers {

namespace {

/// Where figures differ by their units, "<US|metric>" stands for either.
constexpr char starter[] =
    R"(# A farm file to start from. Farm, feeds and figures are invented: put your own in their place.
#
# An amount stands in quotes with its unit: <"2.5 lb", "1 1/2 gal", "1/2 tsp", "24 %", "6 wk", "70 degF"|"1.2 kg", "5.6 L", "2.5 mL", "24 %", "6 wk", "21 degC">.
# <Metric|US> units work as well: <"11 kg", "5.6 L", "25 mL", "21 degC"|"2.5 lb", "1 1/2 gal", "1/2 tsp", "70 degF">.
# What follows a # is a note. Keys behind a # may be left as they are; take the # away to use them.

[farm]
name = "My quail barn"
units = "<us"    |metric">                     # how answers are printed: "us", "metric" or "uk"
currency = "<USD|EUR>"
# warmth = "<70 degF|21 degC>"                 # usual air in the barn once the brooder is off
chores = ["07:00", "18:00"]          # when somebody is in the barn
# scale = "1 g"                      # the finest step of your scale

# ---- The store: for `cropful buy --plan`, when to go and buy what. ----

# [store]
# trip = 15.00                       # what one trip to buy costs
# holds = "<800 lb|400 kg>"                   # the most feed it takes
# lead = "2 d"                       # feed must be there so long before it is fed
# keeping = "0.10 per <50 lb|25 kg>"         # what keeping feed costs a week
# trips = ["Wed", "Sat"]             # when you can buy; leave it out for any day

# ---- Feeds: one table each; the word after the dot is the name you use for it further down. ----

[feed.starter]
title = "Game bird starter"
protein = "28 %"                     # from the label
form = "crumble"                     # "mash", "crumble" or "pellet": how much fits into a hopper
bag = "<50 lb|25 kg>"
price = 27.50                        # of one bag, a number without quotes
# lot = "<1000 lb"  |0.5 tonne">                  # instead of bag, for loose feed, whose price is by weight: "<380 per short ton|420 per tonne>"
# bags = [{ size = "<50 lb|25 kg>", price = 27.50 }, { size = "<50 lb|25 kg>", price = 25.00, from = 10 }]   # instead, if sold so
# on_hand = "<30 lb|15 kg>"                  # what is in the store already
# counted = 2027-04-05               # on that day; leave it out for today
# spare = "<10 lb"|5 kg" >                    # what you want left over
# keeps = "8 wk"                     # how long an opened bag stays good
# energy = "<2900 kcal/kg"|12.1 MJ/kg"  >            # from the label, if it says so
# density = "<38 lb/ft3"|0.61 kg/L">              # if you weighed a full measure<: "2.4 lb/qt" works too|>
# calcium = ["0.8 %", "1.2 %"]       # label minimum and maximum; a single figure is a minimum
# medicated = { drug = "monensin", <per_short_ton = "73 g"|level = "0.008 %">, withdrawal = "0 d" }<  # or level = "0.008 %"|>

[feed.grower]
title = "Game bird grower"
protein = "20 %"
form = "crumble"
bag = "<50 lb|25 kg>"
price = 24.00

# ---- Hoppers: the feeders you fill. ----

[hopper.tube]
volume = "<3 gal"|12 L" >                     # what it holds to the brim; measure it with water
# parts = [{ shape = "cylinder", diameter = "<10 in|25 cm>", height = "<9 in|23 cm>" }]    # instead of volume; also "frustum", "box"
stays_behind = "5 %"                 # feed below the lip that the birds cannot reach
# fill = "100 %"                     # how full you leave it each time
# extra_waste = "0 %"                # scattered beyond the ordinary
# fill_for = "3 d"                   # put in what is eaten in so long, not to the brim
# at_most = "7 d"                    # how long feed stays good in it

# ---- Drinkers. ----

[drinker.jar]
volume = "<1 gal|4 L>"
# displaced = "<8 fl oz"|250 mL" >              # taken up by marbles or stones that keep chicks from drowning
change_every = "1 d"                 # fresh water at least this often
# least = "<8 fl oz"|250 mL" >                  # what the tray needs before birds can drink
# spill = "0 %"
# plumbed = true                     # instead of all this: a water line

# ---- Supplements: what you stir into the water. ----

# [supplement.tonic]
# rate = "<1 tsp per gal"|1 mL per L"   >             # the label's own words
# spoon = "<5 g per tsp"|5 g per 5 mL">              # weigh a level <teaspoon|measuring spoon> once
# keeps = "24 h"                     # how long the mixed water stays good
# mix = "full"                       # fill the drinkers with it, instead of as little as is enough
# sodium = "12 %"                    # of the powder, from the label
# pack = "<8 oz|250 g>"
# price = 9.00
# stock = { proportioner = "1:128", tank = "<5 gal|20 L>", keeps = "3 d" }   # through a proportioner instead of by hand
# drug = "amprolium"                 # for a medicine: what it is one with
# withdrawal = "3 d"                 # of a medicine, from its label; and eggs_withdrawal, of feed too

# ---- Water: what a laboratory found in it. `cropful check` says whether it is fit. ----

# [water]
# sampled = 2027-03-01               # when the sample was taken
# tds = "620 mg/L"                   # dissolved solids; or by conductivity: "970 uS/cm"
# sodium = "40 mg/L"
# chloride = "30 mg/L"
# sulfate = "60 mg/L"
# nitrate = "8 mg/L"                 # or nitrate_n, where the report says nitrate-nitrogen
# nitrite = "0 mg/L"
# iron = "0.1 mg/L"
# manganese = "0.01 mg/L"
# hardness = "<12 grain/gal"|210 mg/L"   >          # as calcium carbonate
# ph = 7.2
# coliforms = 0                      # in 100 mL
# softened = true                    # the birds' water comes through a softener
# sampled_after = true               # and the sample was taken behind it

# ---- Mixing your own feed: what `cropful blend` may choose from, and for whom. ----

# [ingredient.corn]
# like = "corn_yellow"               # `cropful table ingredients` lists what is built in
# price = "<14.50 per 50 lb|320 per tonne>"
# protein = "8.1 %"                  # your own analysis goes before the built-in figure
# at_most = "60 %"                   # of the mix; at_least works too
# liquid = true                      # poured in last, as oil
# mineral = true                     # for limestone, salt and the like that are like none built in
# medicated = true                   # never put into the cheapest mix

# [blend.chicks]
# kind = "bobwhite"
# phase = "0 to 6 wk"                # or age = "3 wk", or laying = true
# batch = "<100 lb|50 kg>"
# scale = "<1 oz"|10 g">                     # the finest step of your scale
# use = ["corn", "starter"]          # what may go in
# need = { protein = "26 %" }        # in place of the kind's need
# amounts = { corn = "<60 lb|30 kg>" }       # instead of use: only look at this mix

# ---- Houses: brooders and pens; how many birds ONE of them holds. ----

[house.tank]
count = 4                            # how many you have
holds = 60                           # or by age: holds = [{ from = "0 d", birds = 150 }, { from = "2 wk", birds = 80 }]
rest = "3 d"                         # stands empty before the next birds come
# floor = { length = "<6 ft|1.8 m>", width = "<3 ft|0.9 m>" }
# bedding = { depth = "<2 in|5 cm>", bag = "<8 ft3|225 L>", price = 7.50 }    # bag: once it is loose
# disinfectant = "bleach"
# solution = "<1 gal"|4 L"  >                 # ready to use, for one cleaning of one house

[house.pen]
count = 2
holds = 120                          # or by kind: holds = { bobwhite = 120, chukar = 70 }
# shared = true                      # several hatches may live in one at a time

# [disinfectant.bleach]
# strength = "7.5 %"                 # of the product, from its label
# use_at = "0.1 %"                   # wanted on the surface, from its label
# pack = "<1 gal|4 L>"
# price = 6.20

# ---- Hatches: one table each, with two brackets. ----

[[hatch]]
name = "First hatch"
kind = "bobwhite"                    # `cropful table` lists the kinds
date = 2027-04-05                    # the day they hatched: year-month-day
chicks = 90                          # or eggs = 140, and if you know it hatch_rate = "65 %"
# birds = 60                         # instead of date and chicks, birds that are there already:
# age = "20 wk"                      # so old
# on = 2027-04-05                    # on that day
# every = "3 wk"                     # the same again, 8 in all: "First hatch 1" to "First hatch 8"
# times = 8
feeding = [
    { feed = "starter", from = "0 d" },
    { feed = "grower", from = "6 wk" },
]
until = "16 wk"                      # how long you keep them
# removed = [{ at = "8 wk", birds = 20 }]    # birds sold or moved
# laying_from = "24 wk"              # for hens kept to lay
# lays = "70 %"                      # eggs a day from 100 birds, cocks counted too
# set = 2027-03-13                   # instead of date, with eggs: when they went into the incubator
# courses = [{ supplement = "tonic", from = "0 d", days = 5 }]
housing = [                          # counts are for each house
    { from = "0 d", house = "tank", hopper = "tube", hoppers = 1, drinker = "jar", drinkers = 2 },
    { from = "4 wk", house = "pen", hopper = "tube", hoppers = 2, drinker = "jar", drinkers = 2 },
]
)";

}  // namespace

std::string starter_farm(quantities::Measures measures) {
    bool const us = measures == quantities::Measures::us;
    std::string text;
    std::string_view rest = starter;
    for (std::size_t open = rest.find('<'); open != std::string_view::npos; open = rest.find('<')) {
        std::size_t const bar = rest.find('|', open), close = rest.find('>', bar);
        text += rest.substr(0, open);
        text += us ? rest.substr(open + 1, bar - open - 1) : rest.substr(bar + 1, close - bar - 1);
        rest.remove_prefix(close + 1);
    }
    text += rest;
    if (measures == quantities::Measures::uk) text.replace(text.find("\"metric\""), 8, "\"uk\"    ");
    return text;
}

}  // namespace cropful::readers
