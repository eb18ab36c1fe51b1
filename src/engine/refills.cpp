#include "engine/refills.hpp"

#include <algorithm>

#include "cropful/fault.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr int most_fills = 20000;  // a vessel emptied every few minutes for years is a slip, not a plan

/// One fill: `content` per vessel from `age`; `due` is the age at which it must be done again whatever is left.
template <class Amount>
Fill<Amount> fill_at(domain::Hatch const& hatch, Flock const& flock, BandedUsage<Amount> const& usage, int count,
                     Amount content, Duration age) {
    Amount const all = content * static_cast<double>(count);
    auto const gone = usage.central.gone(age, all);
    std::optional<Duration> const empty_after = gone ? std::optional(*gone - age) : std::nullopt;
    return {hatch.date + age, age,         flock.alive(age),           content,
            content * 0.0,    empty_after, usage.gone_after(age, all), std::nullopt};
}

NoAnswer too_many_fills(std::string const& key) {
    return NoAnswer(key + ": holds so little that it would be filled more than " + std::to_string(most_fills) +
                    " times; check its size and the number of birds");
}

/// Before any fill is worked out: the usual flock alone empties the vessels, `all` in them at the most, too often.
template <class Amount>
void refuse_countless(std::string const& key, BandedUsage<Amount> const& usage, Amount all, Ages ages) {
    if (ratio(usage.central.between(ages.from, ages.to) / all) > most_fills) throw too_many_fills(key);
}

template <class Amount>
void add_fill(Vessels<Amount>& vessels, Fill<Amount> fill, BandedUsage<Amount> const& usage, Duration next) {
    if (std::ssize(vessels.fills) >= most_fills || !(next > fill.age)) throw too_many_fills(vessels.key);
    fill.used = usage.central.between(fill.age, next) / static_cast<double>(vessels.count);
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

Mass hopper_content(domain::Hopper const& hopper, domain::Feed const& feed, Rations const& rations) {
    return hopper.volume * bulk_density(feed, rations) * hopper.fill * (1 - hopper.stays_behind);
}

Vessels<Mass> hopper_fills(domain::Hatch const& hatch, domain::Hopper const& hopper, BandedUsage<Mass> const& usage,
                           Flock const& flock, Intake const& intake, Rations const& rations, Ages ages) {
    Vessels<Mass> vessels{hopper.key, hatch.hoppers, {}};
    Mass most = kilograms(0);
    for (domain::FeedingStep const& step : hatch.feeding) {
        most = std::max(most, hopper_content(hopper, intake.eaten(step.from + instant), rations));
    }
    refuse_countless(hopper.key, usage, most * static_cast<double>(vessels.count), ages);
    for (Duration age = ages.from; age + instant < ages.to;) {
        Mass const content = hopper_content(hopper, intake.eaten(age + instant), rations);
        auto fill = fill_at(hatch, flock, usage, vessels.count, content, age);
        Duration next = next_feed_change(hatch, age, ages.to);
        if (fill.lasts.p05) next = std::min(next, age + *fill.lasts.p05);
        add_fill(vessels, std::move(fill), usage, next);
        age = next;
    }
    return vessels;
}

Vessels<Volume> drinker_fills(domain::Hatch const& hatch, domain::Drinker const& drinker,
                              domain::Supplement const* supplement, BandedUsage<Volume> const& usage,
                              Flock const& flock, Ages ages) {
    Vessels<Volume> vessels{drinker.key, hatch.drinkers, {}};
    Volume const content = drinker.volume - drinker.displaced;
    refuse_countless(drinker.key, usage, content * static_cast<double>(vessels.count), ages);
    for (Duration age = ages.from; age + instant < ages.to;) {
        auto fill = fill_at(hatch, flock, usage, vessels.count, content, age);
        fill.change_after = change_after(drinker, supplement, age);
        Duration next = ages.to;
        if (fill.lasts.p05) next = std::min(next, age + *fill.lasts.p05);
        if (fill.change_after) next = std::min(next, age + *fill.change_after);
        add_fill(vessels, std::move(fill), usage, next);
        age = next;
    }
    return vessels;
}

}  // namespace cropful::engine
