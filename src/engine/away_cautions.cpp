#include "engine/away_cautions.hpp"

#include <algorithm>

#include "engine/caution_list.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr Duration usual_standing = days(3);  // water is changed every few days; common practice, no source
constexpr char common[] = "common practice, no source";

bool lasts_through(domain::Course const& its, Ages ages) {
    return its.from <= ages.from && course_ends(its) >= ages.to;
}

void course(CautionList& list, domain::Farm const& farm, domain::Hatch const& hatch, domain::Course const& its,
            Ages ages) {
    domain::Supplement const& given = farm.supplements.at(its.supplement);
    if (!is_broken_off(its, given, ages)) return;
    if (!lasts_through(its, ages)) {
        list.add({.id = "course-while-away",
                  .hatches = {hatch.name},
                  .with = {{"supplement", given.title},
                           {"from", hatch.date + its.from},
                           {"to", hatch.date + course_ends(its)}},
                  .source = common});
        return;
    }
    Caution caution{.id = "solution-while-away",
                    .hatches = {hatch.name},
                    .with = {{"form", "unstated"}, {"supplement", given.title}},
                    .source = "21 CFR 520.154a(d): medicated water is prepared fresh daily"};
    if (given.keeps) {
        caution.with["form"] = "stated";
        caution.with["keeps"] = *given.keeps;
        caution.source = "the solution's own `keeps`";
    }
    list.add(std::move(caution));
}

void old_water(CautionList& list, domain::Farm const& farm, domain::Hatch const& hatch, Ages ages) {
    auto const drinker = domain::stage_at(hatch, ages.from).drinker;
    if (!drinker) return;
    if (farm.drinkers.at(*drinker).plumbed) {
        list.add({.id = "line-while-away", .hatches = {hatch.name}, .with = {{"drinker", *drinker}}, .source = common});
        return;
    }
    auto const& every = farm.drinkers.at(*drinker).change_every;
    if (every.value_or(usual_standing) >= ages.to - ages.from) return;
    Caution caution{.id = "old-water-while-away",
                    .hatches = {hatch.name},
                    .with = {{"form", every ? "stated" : "unstated"}, {"stands", ages.to - ages.from}},
                    .source = common};
    if (every) caution.with["every"] = *every;
    list.add(std::move(caution));
}

void planned_work(CautionList& list, domain::Hatch const& hatch, Ages ages) {
    for (domain::FeedingStep const& step : hatch.feeding) {
        if (step.from > ages.from + instant && step.from < ages.to) {
            list.add({.id = "feed-change-while-away",
                      .hatches = {hatch.name},
                      .with = {{"feed", step.feed}, {"from", hatch.date + step.from}},
                      .source = common});
        }
    }
    bool const leave = hatch.until < ages.to ||
                       std::any_of(hatch.removed.begin(), hatch.removed.end(), [&](domain::Removal const& removal) {
                           return removal.at > ages.from && removal.at < ages.to;
                       });
    if (leave) list.add({.id = "leaving-while-away", .hatches = {hatch.name}, .source = common});
}

void brooding(CautionList& list, domain::Hatch const& hatch, Kind const& kind, Ages ages) {
    if (ages.from >= kind.brooding_ends()) return;
    list.add({.id = "brooding-while-away", .hatches = {hatch.name}, .source = common});
}

}  // namespace

bool is_broken_off(domain::Course const& its, domain::Supplement const& given, Ages ages) {
    bool const meets = its.from < ages.to && ages.from < course_ends(its);
    bool const keeps = given.keeps.value_or(days(1)) >= ages.to - ages.from;
    return meets && !(lasts_through(its, ages) && keeps);
}

std::vector<Caution> away_cautions(Away const& away, Rations const& rations) {
    CautionList list;
    for (domain::Hatch const& hatch : away.farm.hatches) {
        auto const holding = std::find_if(away.holdings.begin(), away.holdings.end(),
                                          [&](Holding const& one) { return one.hatch == hatch.name; });
        if (holding == away.holdings.end()) continue;
        Ages const ages{holding->age, away.absence.until - hatch.date};
        brooding(list, hatch, rations.kinds.at(hatch.kind), ages);
        for (domain::Course const& one : domain::courses_of(hatch, away.farm))
            course(list, away.farm, hatch, one, ages);
        old_water(list, away.farm, hatch, ages);
        planned_work(list, hatch, ages);
    }
    list.add({.id = "chances-of-sound-vessels", .source = common});
    return list.all();
}

}  // namespace cropful::engine
