#include "engine/refills.hpp"

#include <algorithm>

#include "cropful/fault.hpp"

namespace cropful::engine {

namespace {

constexpr std::size_t most_fills = 20000;  // a vessel emptied every few minutes for years is a slip, not a plan

/// One fill: `content` per vessel from `age`; `due` is the age at which it must be done again whatever is left.
template <class Amount>
Fill<Amount> fill_at(domain::Hatch const& hatch, Flock const& flock, Usage<Amount> const& usage, int count,
                     Amount content, Duration age) {
    auto const gone = usage.gone(age, content * static_cast<double>(count));
    std::optional<Duration> const lasts = gone ? std::optional(*gone - age) : std::nullopt;
    return {hatch.date + age, age, flock.alive(age), content, content * 0.0, lasts, std::nullopt};
}

template <class Amount>
void add(Vessels<Amount>& vessels, Fill<Amount> fill, Usage<Amount> const& usage, Duration next) {
    if (vessels.fills.size() >= most_fills || !(next > fill.age)) {
        throw NoAnswer(vessels.key + ": holds so little that it would be filled more than " +
                       std::to_string(most_fills) + " times; check its size and the number of birds");
    }
    fill.used = usage.between(fill.age, next) / static_cast<double>(vessels.count);
    vessels.fills.push_back(std::move(fill));
}

/// The first change of feed after an age, or the end.
Duration next_feed_change(domain::Hatch const& hatch, Duration age, Duration end) {
    for (domain::FeedingStep const& step : hatch.feeding) {
        if (step.from > age + instant) return std::min(step.from, end);
    }
    return end;
}

/// How long water stands in a drinker at most: its own rule and, during a course, the life of the solution.
std::optional<Duration> change_after(domain::Drinker const& drinker, domain::Supplement const* supplement,
                                     Duration age) {
    std::optional<Duration> soonest = drinker.change_every;
    if (supplement == nullptr || age + instant >= course_ends(*supplement)) return soonest;
    auto const sooner = [&](Duration d) { soonest = soonest ? std::min(*soonest, d) : d; };
    if (age + instant < supplement->from) {
        sooner(supplement->from - age);  // plain water makes way for the first batch
        return soonest;
    }
    sooner(batch_life(*supplement));
    sooner(course_ends(*supplement) - age);  // and the last batch for plain water
    return soonest;
}

}  // namespace

MassPerVolume bulk_density(domain::Feed const& feed, Rations const& rations) {
    if (feed.density) return *feed.density;
    return rations.forms.at(domain::name(feed.form.value_or(domain::Form::crumble))).density[1];
}

Duration course_ends(domain::Supplement const& supplement) {
    return supplement.from + days(static_cast<double>(supplement.days_long));
}

Duration batch_life(domain::Supplement const& supplement) {
    return std::min(days(1), supplement.keeps.value_or(days(1)));
}

Vessels<Mass> hopper_fills(domain::Hatch const& hatch, domain::Hopper const& hopper, Usage<Mass> const& usage,
                           Flock const& flock, Intake const& intake, Rations const& rations, Duration from,
                           Duration to) {
    Vessels<Mass> vessels{hopper.key, hatch.hoppers, {}};
    for (Duration age = from; age + instant < to;) {
        Mass const content = hopper.volume * bulk_density(intake.eaten(age + instant), rations) * hopper.fill *
                             (1 - hopper.stays_behind);
        auto fill = fill_at(hatch, flock, usage, vessels.count, content, age);
        Duration next = next_feed_change(hatch, age, to);
        if (fill.empty_after) next = std::min(next, age + *fill.empty_after);
        add(vessels, std::move(fill), usage, next);
        age = next;
    }
    return vessels;
}

Vessels<Volume> drinker_fills(domain::Hatch const& hatch, domain::Drinker const& drinker,
                              domain::Supplement const* supplement, Usage<Volume> const& usage, Flock const& flock,
                              Duration from, Duration to) {
    Vessels<Volume> vessels{drinker.key, hatch.drinkers, {}};
    for (Duration age = from; age + instant < to;) {
        auto fill = fill_at(hatch, flock, usage, vessels.count, drinker.volume - drinker.displaced, age);
        fill.change_after = change_after(drinker, supplement, age);
        Duration next = to;
        if (fill.empty_after) next = std::min(next, age + *fill.empty_after);
        if (fill.change_after) next = std::min(next, age + *fill.change_after);
        add(vessels, std::move(fill), usage, next);
        age = next;
    }
    return vessels;
}

}  // namespace cropful::engine
