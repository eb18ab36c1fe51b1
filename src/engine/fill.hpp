#pragma once

#include <algorithm>
#include <cmath>

#include "cropful/fault.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/refills.hpp"
#include "engine/rounding.hpp"

namespace cropful::engine {

using namespace quantities;

inline constexpr int most_fills = 20000;  // a vessel emptied every few minutes for years is a slip, not a plan

inline NoAnswer too_many_fills(std::string const& key) {
    return NoAnswer(key + ": holds so little that it would be filled more than " + std::to_string(most_fills) +
                    " times; check its size and the number of birds");
}

/// Before any fill is worked out: the usual flock alone empties the vessels, `all` in them at the most, too often.
template <class Amount>
void refuse_countless(std::string const& key, BandedUsage<Amount> const& usage, Amount all, Ages ages) {
    if (ratio(usage.central.between(ages.from, ages.to) / all) > most_fills) throw too_many_fills(key);
}

/// A fill at an age that leaves `content` in each of some vessels.
template <class Amount>
Fill<Amount> fill_at(Tended const& tended, BandedUsage<Amount> const& usage, int count, Amount content, Duration age) {
    Amount const all = content * static_cast<double>(count);
    auto const gone = usage.central.gone(age, all);
    Moment const at = tended.hatch.date + age;
    return {.at = at,
            .do_at = tended.hatch.date + tended.chores.last_by(age),
            .age = age,
            .birds = tended.flock.alive(age),
            .content = content,
            .brim = content,
            .put_in = all,
            .until = at,
            .used = content * 0.0,
            .empty_after = gone ? std::optional(*gone - age) : std::nullopt,
            .lasts = usage.gone_after(age, all),
            .change_after = {}};
}

/// The last chore at which nobody is late for what ends at an age; the next one where that is past.
inline Duration in_time(ChoresByAge const& chores, Duration now, Duration end) {
    Duration const last = chores.last_by(end);
    return last > now + instant ? last : chores.first_after(now);
}

/// What the diary knows of vessels between two ages, unless they may have been empty since without its saying so.
template <class Amount>
std::optional<Start<Amount>> start_in_date(Tended& tended, std::optional<Level> const& level,
                                           BandedUsage<Amount> const& usage, Amount brim, Duration from, Duration to) {
    auto const known = known_start(tended, level, brim, from, to);
    if (!known) return std::nullopt;
    Duration const now = std::min(tended.now.value_or(tended.begun), to);
    auto const sure = usage.gone_after(known->age, known->content).p05;
    bool const silent = sure && known->age + *sure < now;
    if (!silent || !level->full) return known;
    tended.out_of_date = true;
    return std::nullopt;
}

/// Vessels of so much each that hold what is needed; 0 where `count` of them do.
template <class Amount>
int vessels_for(Amount need, Amount each, int count) {
    double const vessels = std::ceil(ratio(need / each) - rounding);
    return vessels > count ? whole_number(std::min(vessels, 1e9)) : 0;
}

}  // namespace cropful::engine
