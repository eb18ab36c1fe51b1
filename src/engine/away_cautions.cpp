#include "engine/away_cautions.hpp"

#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "engine/caution_list.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

namespace {

constexpr Duration usual_standing = days(3);  // water is changed every few days; common practice, no source
constexpr char common[] = "common practice, no source";

void supplement(CautionList& list, domain::Farm const& farm, domain::Hatch const& hatch, Ages ages) {
    if (!hatch.supplement) return;
    domain::Supplement const& given = farm.supplements.at(*hatch.supplement);
    if (!(given.from < ages.to && ages.from < course_ends(given))) return;
    bool const all_the_time = given.from <= ages.from && course_ends(given) >= ages.to;
    if (all_the_time && given.keeps && *given.keeps >= ages.to - ages.from) return;
    if (!all_the_time) {
        list.add(
            "course-while-away",
            hatch.name + ": the course of " + given.title + " is from " + (hatch.date + given.from).day() + " to " +
                (hatch.date + course_ends(given)).day() +
                ", partly while nobody is there to start or end it. Leave plain water, and see what its label says "
                "of a course put off or broken off. " +
                defer,
            common);
        return;
    }
    list.add(
        "solution-while-away",
        hatch.name + ": " + given.title + " keeps " +
            (given.keeps ? print(*given.keeps) : std::string("no longer than a day")) +
            " once mixed. Leave plain water for this time, and go on with the course afterwards as its label says. "
            "A course of medicine must not be broken off: then do not go. " +
            defer,
        given.keeps ? "the solution's own `keeps`" : "21 CFR 520.154a(d): medicated water is prepared fresh daily");
}

void old_water(CautionList& list, domain::Farm const& farm, domain::Hatch const& hatch, Ages ages) {
    if (!hatch.drinker) return;
    auto const& every = farm.drinkers.at(*hatch.drinker).change_every;
    if (every.value_or(usual_standing) >= ages.to - ages.from) return;
    list.add("old-water-while-away",
             hatch.name + ": the water will stand " + print(ages.to - ages.from) +
                 (every ? ", you change it every " + print(*every) : std::string(" and go foul")) +
                 ". Scrub the drinkers before you go.",
             common);
}

void planned_work(CautionList& list, domain::Hatch const& hatch, Ages ages) {
    for (domain::FeedingStep const& step : hatch.feeding) {
        if (step.from > ages.from + instant && step.from < ages.to) {
            list.add("feed-change-while-away",
                     hatch.name + ": " + step.feed + " is due from " + (hatch.date + step.from).day() +
                         "; the birds are counted on the feed they have till you are back.",
                     common);
        }
    }
    bool const leave = hatch.until < ages.to ||
                       std::any_of(hatch.removed.begin(), hatch.removed.end(), [&](domain::Removal const& removal) {
                           return removal.at > ages.from && removal.at < ages.to;
                       });
    if (leave)
        list.add("leaving-while-away",
                 hatch.name + ": birds are due to leave in this time; they are counted as staying.", common);
}

void brooding(CautionList& list, domain::Hatch const& hatch, Kind const& kind, Ages ages) {
    if (ages.from >= kind.brooding_ends()) return;
    list.add("brooding-while-away",
             hatch.name +
                 ": chicks under a brooder die within hours of its going out or overheating. Have somebody look "
                 "in every few hours, whatever hoppers and drinkers hold.",
             common);
}

}  // namespace

std::vector<Caution> away_cautions(Away const& away, Rations const& rations) {
    CautionList list;
    for (domain::Hatch const& hatch : away.farm.hatches) {
        auto const holding = std::find_if(away.holdings.begin(), away.holdings.end(),
                                          [&](Holding const& one) { return one.hatch == hatch.name; });
        if (holding == away.holdings.end()) continue;
        Ages const ages{holding->age, away.absence.until - hatch.date};
        brooding(list, hatch, rations.kinds.at(hatch.kind), ages);
        supplement(list, away.farm, hatch, ages);
        old_water(list, away.farm, hatch, ages);
        planned_work(list, hatch, ages);
    }
    list.add(
        "chances-of-sound-vessels",
        "The chances are for vessels that work: a tipped or blocked drinker, feed that bridges in the tube, rats or "
        "a sick flock are not in them. Birds are to be looked at at least once a day; local law may ask for more.",
        common);
    return list.all();
}

}  // namespace cropful::engine
