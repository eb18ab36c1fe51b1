#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "engine/caution_list.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

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
    list.add("standing-water",
             drinker->key + ": " +
                 (every ? "change_every is " + print(*every) + ", and water goes foul before that."
                        : "a full drinker lasts for days, but water goes foul long before.") +
                 " Change and rinse it daily under 3 weeks of age, every 2 d later, whatever is left" +
                 (every ? "." : ", and say so with change_every."),
             "common practice, no source");
}

void drowning(CautionList& list, HatchPlan const& part, domain::Drinker const* drinker) {
    if (drinker == nullptr || part.feeds.empty() || in_days(part.feeds.front().from) >= drowning_days) return;
    list.add(
        "drowning",
        "Small chicks drown in open drinkers: for the first two weeks use a narrow-lipped base, or keep the trough "
        "filled with marbles or stones.",
        "Storey, Raising Poultry (chicks drown in ordinary founts); two weeks: common practice, no source");
}

template <class Amount>
void too_small(CautionList& list, HatchPlan const& part, std::optional<Vessels<Amount>> const& vessels,
               std::string const& what) {
    if (!vessels) return;
    Fill<Amount> const* first = nullptr;
    Fill<Amount> const* worst = nullptr;
    for (auto const& fill : vessels->fills) {
        if (!fill.lasts.p05 || in_days(*fill.lasts.p05) * 24 >= overnight_hours) continue;
        if (!first) first = &fill;
        if (!worst || *fill.lasts.p05 < *worst->lasts.p05) worst = &fill;
    }
    if (!first) return;
    list.add("vessel-too-small",
             part.hatch.name + ": from about " + first->at.day() + " " + std::to_string(vessels->count) + " x " +
                 vessels->key + " " + what + " in as little as " + print(*worst->lasts.p05) +
                 ", less than a night. Add more before then, or come more often.",
             "common practice, no source");
}

/// Drinkers that would outlast what is mixed into them.
void older_than_its_life(CautionList& list, HatchPlan const& part, domain::Supplement const& supplement) {
    if (!supplement.keeps) {
        list.add("solution-life-unstated",
                 supplement.title +
                     ": how long the solution keeps is not stated; it is planned fresh every day. Never " +
                     "top up an old solution.",
                 "21 CFR 520.154a(d): medicated water is prepared fresh daily");
        return;
    }
    if (!part.drinkers) return;
    for (auto const& fill : part.drinkers->fills) {
        bool const in_course = fill.age >= supplement.from && fill.age < course_ends(supplement);
        if (!in_course || !fill.empty_after || *fill.empty_after <= *supplement.keeps) continue;
        list.add("solution-life",
                 "A full drinker of " + supplement.title + " would last longer than the solution's " +
                     print(*supplement.keeps) +
                     ". Mix only what is drunk in that time; throw away and rinse, do not top up.",
                 "the solution's own `keeps`");
        return;
    }
}

/// The heat response was measured up to here.
constexpr Temperature known_heat = Temperature::celsius(32);

void heat(CautionList& list, domain::Farm const& farm) {
    if (!farm.warmth || *farm.warmth <= known_heat) return;
    list.add(
        "heat",
        "farm.warmth is above 32 C (90 F), hotter than the trials behind the heat response: birds may eat far less "
        "and drink two to four times as much. See to shade, air and more drinkers first.",
        "Drinking Water Quality for Poultry, NC State Extension (two to four times the water in heat)");
}

}  // namespace

void water_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations) {
    auto const& hatch = part.hatch;
    domain::Drinker const* drinker = hatch.drinker ? &plan.farm.drinkers.at(*hatch.drinker) : nullptr;
    heat(list, plan.farm);
    drowning(list, part, drinker);
    standing_water(list, part, drinker);
    too_small(list, part, part.drinkers, "runs dry");
    too_small(list, part, part.hoppers, "is empty");
    if (!part.mix || part.mix->batches.empty()) return;
    domain::Supplement const& supplement = plan.farm.supplements.at(part.mix->supplement);
    for (Caution const& caution : mix_cautions(supplement, rations.limits))
        list.add(caution.id, caution.text, caution.source);
    older_than_its_life(list, part, supplement);
}

}  // namespace cropful::engine
