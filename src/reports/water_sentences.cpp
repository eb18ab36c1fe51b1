#include "reports/sentences.hpp"

namespace cropful::reports {

Sentences water_sentences() {
    return {
        {"sodium-lethal", "{supplement} adds {added:mg/L} mg/L sodium to the water. {do_not_give} At {limit}."},
        {"sodium-water",
         "{supplement} adds {added:mg/L} mg/L sodium to the water, above {lowest} ({lowest_applies}, "
         "{lowest_meaning})< "
         "and above {highest} ({highest_applies}: {highest_meaning})>. These are guides for water drunk all the time: "
         "keep the course short, then give plain water."},
        {"bare-ounces",
         "{supplement}: \"{rate}\" was read as ounces by weight (28.35 g). If the product is a liquid its label means "
         "fluid ounces (29.57 mL): write fl oz."},
        {"stock-off-label",
         "{supplement}: the stock through the proportioner gives {through:g/L} g/L, the label rate {label:g/L} g/L, "
         "{apart} apart. Set one right before dosing."},
        {"acid-in-metal",
         "{supplement}: acid takes zinc out of galvanised founts, and zinc poisons birds. Use plastic, glass or "
         "stainless steel, and never mix it with chlorine: that gives off poisonous gas."},
        {"vitamins-for-weeks",
         "{supplement} is given for {days} d. Vitamins A and D3 build up beside a complete feed: give it for the few "
         "days of its label. The EU allows no vitamin D3 in drinking water."},
        {"solution-life-unstated",
         "{supplement}: how long the solution keeps is not stated; it is planned fresh every day. Never top up an old "
         "solution."},
        {"solution-life",
         "{hatches}: {supplement} keeps {keeps}, but nobody is there to change it for {stands}. Mix it fresh in "
         "between, "
         "or come more often: throw away and rinse, do not top up."},
        {"dose-too-small",
         "{supplement}: what a batch takes< ({amount:g} g)> is too little for a kitchen's spoons or your scale "
         "(farm.scale). "
         "Weigh it on a finer scale, or use a syringe."},
        {"standing-water/stated",
         "{drinker}: change_every is {every}, and water goes foul before that. Change and rinse it daily under 3 weeks "
         "of age, every 2 d later, whatever is left."},
        {"standing-water/unstated",
         "{drinker}: a full drinker lasts for days, but water goes foul long before. Change and rinse it daily under 3 "
         "weeks of age, every 2 d later, whatever is left, and say so with change_every."},
        {"drowning",
         "Small chicks drown in open drinkers: for the first two weeks use a narrow-lipped base, or keep the trough "
         "filled with marbles or stones."},
        {"vessel-too-small/water",
         "{hatches}: from about {from} {count} x {vessel} can run dry in {shortest}, before anybody is there again. "
         "{would_do} would "
         "last: add them before then, or come more often."},
        {"vessel-too-small/feed",
         "{hatches}: from about {from} {count} x {vessel} can be empty in {shortest}, before anybody is there again. "
         "{would_do} would "
         "last: add them before then, or come more often."},
        {"stale-feed/each",
         "{hopper}: a full one lasts longer than feed stays wholesome in it (7 d under 3 weeks of age, 14 d later). "
         "Warm, damp, soiled feed goes mouldy: fill less. For 7 d: {weekly:in each}."},
        {"stale-feed/many",
         "{hopper}: a full one lasts longer than feed stays wholesome in it (7 d under 3 weeks of age, 14 d later). "
         "Warm, damp, soiled feed goes mouldy: fill less. For 7 d: {count} hatches {least} to {most} in each."},
        {"heat",
         "farm.warmth is above {known}, hotter than the trials behind the heat response: birds may eat far less and "
         "drink two to four times as much. See to shade, air and more drinkers first."},
    };
}

}  // namespace cropful::reports
