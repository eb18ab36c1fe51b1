#include "reports/sentences.hpp"

namespace cropful::reports {

Sentences water_sentences() {
    return {
        {"water-stop",
         "This water is not fit for birds ({items}): `cropful check` has the figures. Give other water at once; "
         "thirsty or dull birds drink little and often at first. The laboratory and your veterinarian decide."},
        {"water-caution/above",
         "{item} of the water, {value} {unit}, is above {limit}. Give chicks and layers better water first, or blend "
         "it, and ask the laboratory or your veterinarian. Nothing that adds to it goes in."},
        {"water-caution/below",
         "{item} of the water, {value}, is below {limit}. Give chicks and layers better water first, and ask the "
         "laboratory or your veterinarian."},
        {"water-people",
         "{item} of the water, {value} {unit}, is above {limit}. For people who drink it ask the laboratory or your "
         "health department."},
        {"water-old",
         "The water was sampled on {sampled:year}, more than a year ago, and wells change: have it tested again."},
        {"diet-sodium",
         "{feed} with water of {drunk:mg/L} mg/L sodium is a diet of {diet:amount} sodium for {kind}; {ceiling:amount} "
         "is the most. Ask for a feed with less salt, or give better water."},
        {"sodium-lethal",
         "{supplement} adds {added:mg/L} mg/L sodium to the water<, {sum:mg/L} with what is in it before>. "
         "{do_not_give} At {limit}."},
        {"sodium-water/guide",
         "{supplement} adds {added:mg/L} mg/L sodium to the water<, {sum:mg/L} with what is in it before>, above "
         "{limit}. Guides are for water drunk all the time: keep the course short, then give plain water."},
        {"sodium-water/caution",
         "{supplement} adds {added:mg/L} mg/L sodium to the water<, {sum:mg/L} with what is in it before>, above "
         "{limit}. Give less of it, or stir it into better water, and ask your veterinarian first. {defer}"},
        {"chlorine-gas",
         "Never mix bleach with acid, vinegar, ammonia or another cleaner: that gives off poisonous gas. Each goes in "
         "by itself, and no two into one stock bucket."},
        {"chlorine-drugs",
         "No chlorine while a vaccine or a medicine is in the water: it spoils them. Stop before, and flush the "
         "lines."},
        {"chlorine-label",
         "Plain bleach without scent or thickener, fresh: it weakens in store. Measure free chlorine at the drinker "
         "that is farthest away. {defer}"},
        {"chlorine-strong",
         "{wanted:mg/L} mg/L is more than the {least:mg/L} to {most:mg/L} mg/L of drinking water: for lines and "
         "drinkers without birds. Flush them, and let birds drink when it is down again."},
        {"dose-by-weight",
         "{supplement}: a dose by weight of birds goes into what they drink in ONE day. Go by what they drank "
         "yesterday, "
         "and weigh some of them: in heat they drink more. {defer}"},
        {"water-to-come",
         "water.sampled is {sampled:year}, a day that has not come: nobody knows how old the sample is."},
        {"bare-ounces",
         "{supplement}: \"{rate}\" was read as ounces by weight (28.35 g). If the product is a liquid its label means "
         "fluid ounces (29.57 mL): write fl oz."},
        {"stock-off-label/by measure",
         "{supplement}: the stock through the proportioner gives {through} mL/L, the label rate {label} mL/L, {apart} "
         "apart. Set one right before dosing."},
        {"stock-off-label/by weight",
         "{supplement}: the stock through the proportioner gives {through:g/L} g/L, the label rate {label:g/L} g/L, "
         "{apart} apart. Set one right before dosing."},
        {"stock-tank-too-small",
         "{supplement}: a full stock tank lasts {lasts} for certain on {from:year}, but nobody is there again for "
         "{gap}. "
         "Then birds get plain water: take a larger tank, or come more often."},
        {"stock-life",
         "{supplement}: the stock keeps {keeps}, but nobody is there to mix it fresh for {stands}. Come more often, or "
         "mix it fresh in between: throw away and rinse, do not top up."},
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
