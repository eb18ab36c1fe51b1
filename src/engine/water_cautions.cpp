#include <algorithm>

#include "engine/caution_list.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double drowning_days = 14;  // chicks small enough to drown in an open trough; common practice, no source
constexpr Duration small_chicks = days(21), daily = days(1), every_other_day = days(2);  // common practice, no source
constexpr double overnight_hours = 12;  // a vessel that lasts less cannot be left for a night

/// Water that stands longer than a day over small chicks, or two over larger birds.
void standing_water(CautionList& list, HatchPlan const& part, domain::Drinker const* drinker) {
    if (drinker == nullptr || !part.drinkers) return;
    bool const foul =
        std::any_of(part.drinkers->fills.begin(), part.drinkers->fills.end(), [](Fill<Volume> const& fill) {
            bool const small = fill.age < small_chicks;
            auto const stands = [](std::optional<Duration> const& one) { return one.value_or(days(1e6)); };
            Duration const life = std::min(stands(fill.empty_after), stands(fill.change_after));
            return life > (small ? daily : every_other_day) + instant;
        });
    if (!foul) return;
    auto const& every = drinker->change_every;
    Caution caution{.id = "standing-water",
                    .with = {{"form", every ? "stated" : "unstated"}, {"drinker", drinker->key}},
                    .source = "common practice, no source"};
    if (every) caution.with["every"] = *every;
    list.add(std::move(caution));
}

void drowning(CautionList& list, HatchPlan const& part, domain::Drinker const* drinker) {
    if (drinker == nullptr || part.feeds.empty() || in_days(part.feeds.front().from) >= drowning_days) return;
    list.add({.id = "drowning",
              .source = "Storey, Raising Poultry (chicks drown in ordinary founts); two weeks: common practice, no "
                        "source"});
}

template <class Amount>
void too_small(CautionList& list, HatchPlan const& part, std::optional<Vessels<Amount>> const& vessels,
               std::string const& held) {
    if (!vessels) return;
    Fill<Amount> const* first = nullptr;
    Fill<Amount> const* worst = nullptr;
    for (auto const& fill : vessels->fills) {
        if (!fill.lasts.p05 || in_days(*fill.lasts.p05) * 24 >= overnight_hours) continue;
        if (!first) first = &fill;
        if (!worst || *fill.lasts.p05 < *worst->lasts.p05) worst = &fill;
    }
    if (!first) return;
    list.add({.id = "vessel-too-small",
              .hatches = {part.hatch.name},
              .with = {{"form", held},
                       {"from", first->at},
                       {"count", static_cast<double>(vessels->count)},
                       {"vessel", vessels->key},
                       {"shortest", *worst->lasts.p05}},
              .source = "common practice, no source"});
}

/// Drinkers that would outlast what is mixed into them.
void older_than_its_life(CautionList& list, HatchPlan const& part, domain::Supplement const& supplement) {
    if (!supplement.keeps) {
        list.add({.id = "solution-life-unstated",
                  .with = {{"supplement", supplement.title}},
                  .source = "21 CFR 520.154a(d): medicated water is prepared fresh daily"});
        return;
    }
    if (!part.drinkers) return;
    for (auto const& fill : part.drinkers->fills) {
        bool const in_course = fill.age >= supplement.from && fill.age < course_ends(supplement);
        if (!in_course || !fill.empty_after || *fill.empty_after <= *supplement.keeps) continue;
        list.add({.id = "solution-life",
                  .with = {{"supplement", supplement.title}, {"keeps", *supplement.keeps}},
                  .source = "the solution's own `keeps`"});
        return;
    }
}

/// The heat response was measured up to here.
constexpr Temperature known_heat = Temperature::celsius(32);

void heat(CautionList& list, domain::Farm const& farm) {
    if (!farm.warmth || *farm.warmth <= known_heat) return;
    list.add(
        {.id = "heat",
         .with = {{"known", known_heat}},
         .source = "Drinking Water Quality for Poultry, NC State Extension (two to four times the water in heat)"});
}

}  // namespace

void water_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations) {
    auto const& hatch = part.hatch;
    domain::Drinker const* drinker = hatch.drinker ? &plan.farm.drinkers.at(*hatch.drinker) : nullptr;
    heat(list, plan.farm);
    drowning(list, part, drinker);
    standing_water(list, part, drinker);
    too_small(list, part, part.drinkers, "water");
    too_small(list, part, part.hoppers, "feed");
    if (!part.mix || part.mix->batches.empty()) return;
    domain::Supplement const& supplement = plan.farm.supplements.at(part.mix->supplement);
    for (Caution const& caution : mix_cautions(supplement, rations.limits)) list.add(caution);
    older_than_its_life(list, part, supplement);
}

}  // namespace cropful::engine
