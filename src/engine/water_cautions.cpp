#include <algorithm>

#include "cropful/domain/ranges.hpp"
#include "engine/caution_list.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double drowning_days = 14;  // chicks small enough to drown in an open trough; common practice, no source
constexpr Duration small_chicks = days(21), daily = days(1), every_other_day = days(2);  // common practice, no source

/// Water that stands longer than a day over small chicks, or two over larger birds.
void standing_water(CautionList& list, Vessels<Volume> const& drinkers, domain::Drinker const& drinker) {
    bool const foul = std::any_of(drinkers.fills.begin(), drinkers.fills.end(), [](Fill<Volume> const& fill) {
        bool const small = fill.age < small_chicks;
        auto const stands = [](std::optional<Duration> const& one) { return one.value_or(days(1e6)); };
        bool const planned = fill.until > fill.at && !fill.change_after;
        Duration const until = planned ? fill.until - fill.at : stands(fill.change_after);
        Duration const life = std::min(stands(fill.empty_after), until);
        return life > (small ? daily : every_other_day) + instant;
    });
    if (!foul) return;
    auto const& every = drinker.change_every;
    Caution caution{.id = "standing-water",
                    .with = {{"form", every ? "stated" : "unstated"}, {"drinker", drinker.key}},
                    .source = "common practice, no source"};
    if (every) caution.with["every"] = *every;
    list.add(std::move(caution));
}

void drowning(CautionList& list, HatchPlan const& part) {
    if (part.feeds.empty() || in_days(part.feeds.front().from) >= drowning_days) return;
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
    int would_do = 0;
    for (auto const& fill : vessels->fills) {
        if (fill.would_do == 0 || !fill.lasts.p05) continue;
        if (!first) first = &fill;
        would_do = std::max(would_do, fill.would_do);
        if (!worst || *fill.lasts.p05 < *worst->lasts.p05) worst = &fill;
    }
    if (!first) return;
    list.add({.id = "vessel-too-small",
              .hatches = {part.hatch.name},
              .with = {{"form", held},
                       {"from", first->at},
                       {"count", static_cast<double>(vessels->count)},
                       {"vessel", vessels->key},
                       {"shortest", *worst->lasts.p05},
                       {"would_do", static_cast<double>(would_do)}},
              .source = "common practice, no source"});
}

/// Drinkers that would outlast what is mixed into them.
void older_than_its_life(CautionList& list, HatchPlan const& part, domain::Supplement const& supplement,
                         Mix const& mix) {
    if (!supplement.keeps) {
        list.add({.id = "solution-life-unstated",
                  .with = {{"supplement", supplement.title}},
                  .source = "21 CFR 520.154a(d): medicated water is prepared fresh daily"});
        return;
    }
    for (Batch const& batch : mix.batches) {
        if (batch.lasts <= *supplement.keeps + instant) continue;
        list.add({.id = "solution-life",
                  .hatches = {part.hatch.name},
                  .with = {{"supplement", supplement.title}, {"keeps", *supplement.keeps}, {"stands", batch.lasts}},
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

void water_cautions(CautionList& list, Plan const& plan, HatchPlan const& part) {
    heat(list, plan.farm);
    bool const founts = ranges::any_of(domain::stages_of(part.hatch), [&](domain::Stage const& stage) {
        return stage.drinker && !plan.farm.drinkers.at(*stage.drinker).plumbed;
    });
    if (founts) drowning(list, part);
    for (StagePlan const& stage : part.stages) {
        if (stage.drinkers) standing_water(list, *stage.drinkers, plan.farm.drinkers.at(stage.drinkers->key));
        too_small(list, part, stage.drinkers, "water");
        too_small(list, part, stage.hoppers, "feed");
    }
    for (Mix const& mix : part.mixes) {
        if (mix.batches.empty()) continue;
        domain::Supplement const& supplement = plan.farm.supplements.at(mix.supplement);
        for (Caution const& caution : mix_cautions(supplement)) list.add(caution);
        older_than_its_life(list, part, supplement, mix);
        Dose const& dose = mix.batches.front().dose;
        if (!dose.stock && !can_be_measured(dose, plan.farm)) {
            Caution caution{.id = "dose-too-small",
                            .with = {{"supplement", supplement.title}},
                            .source = "common practice, no source"};
            if (dose.by_weight) caution.with["amount"] = *dose.by_weight;
            list.add(std::move(caution));
        }
    }
}

}  // namespace cropful::engine
