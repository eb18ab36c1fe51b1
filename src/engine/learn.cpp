#include "cropful/engine/learn.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/domain/words.hpp"
#include "engine/heads.hpp"
#include "engine/intervals.hpp"

namespace cropful::engine {

namespace {

/// Whether an interval says how much healthy birds use.
bool is_measure(Interval const& interval) { return !interval.ran_empty && !interval.miscounted; }

/// How far off an interval was, by what is believed.
void judge(Interval& interval, Measured const& measured, Belief const& belief) {
    auto const law = belief.expected(measured.sight);
    interval.expected = interval.table * std::exp(law.mean);
    interval.sds = (measured.off_table - law.mean) / std::sqrt(law.variance + top_up_sd * top_up_sd);
    interval.alarm = is_measure(interval) && std::abs(interval.sds) > alarm_sds;
}

bool useless(Interval const& interval) { return is_measure(interval) && std::abs(interval.sds) > useless_sds; }

bool same_vessels(Interval const& a, Interval const& b) { return a.hatch == b.hatch && a.what == b.what; }

/// The last interval of the same vessels before this one.
Interval const* before(std::vector<Interval> const& earlier, Interval const& interval) {
    auto const found = std::find_if(earlier.rbegin(), earlier.rend(),
                                    [&](Interval const& one) { return same_vessels(one, interval); });
    return found == earlier.rend() ? nullptr : &*found;
}

void take_in(Lessons& lessons, Measured const& measured) {
    Interval interval = measured.interval;
    judge(interval, measured, lessons.belief);
    Interval const* last = before(lessons.intervals, interval);
    bool const lasting = useless(interval) && last && useless(*last) && last->sds * interval.sds > 0;
    interval.taught = is_measure(interval) && (!useless(interval) || lasting);
    if (lasting) lessons.belief.reopen(measured.sight.flock);
    if (interval.taught) lessons.belief.observe(measured.sight, measured.off_table, top_up_sd);
    lessons.intervals.push_back(std::move(interval));
}

/// What the hatch uses over the table at the age of its last entry, and how it was learned.
Learned learned_of(Lessons const& lessons, std::size_t flock, Rations const& rations, domain::Diary const& diary) {
    domain::Hatch const& hatch = lessons.farm.hatches[flock];
    Learned learned{.hatch = hatch.name, .heads_at = {}, .heads = {}};
    Duration age = hatch.first_age;
    for (domain::Entry const& entry : diary) {
        if (entry.hatch == hatch.name) age = std::max(age, entry.at - hatch.date);
    }
    for (Interval const& interval : lessons.intervals) {
        if (interval.hatch != hatch.name || !interval.taught) continue;
        (interval.what == Trait::feed ? learned.feed_top_ups : learned.water_top_ups) += 1;
    }
    Kind const& kind = rations.kinds.at(hatch.kind);
    Intake const intake(lessons.farm, hatch, kind);
    double const feed = lessons.belief.score(flock, Trait::feed).mean * intake.feed_sd(age);
    learned.feed = std::exp(feed);
    learned.water = std::exp(feed + lessons.belief.score(flock, Trait::water).mean * intake.water_sd());
    if (!hatch.heads.empty()) {
        learned.heads_at = hatch.date + hatch.heads.back().at;
        learned.heads = Flock(hatch, kind).alive(hatch.heads.back().at);
    }
    return learned;
}

constexpr double worth_saying = 0.005;  // a factor nearer to 1 than this changes nothing a grower would see

bool says_something(Learned const& learned) {
    return learned.feed_top_ups > 0 || learned.water_top_ups > 0 || learned.heads ||
           std::abs(learned.feed - 1) > worth_saying || std::abs(learned.water - 1) > worth_saying;
}

std::vector<std::string> strangers(domain::Farm const& farm, domain::Diary const& diary) {
    std::vector<std::string> names;
    for (domain::Entry const& entry : diary) {
        bool const known = std::any_of(farm.hatches.begin(), farm.hatches.end(),
                                       [&](domain::Hatch const& hatch) { return hatch.name == entry.hatch; });
        if (known || std::find(names.begin(), names.end(), entry.hatch) != names.end()) continue;
        names.push_back(entry.hatch);
    }
    return names;
}

}  // namespace

std::vector<Interval> Lessons::alarms() const {
    std::vector<Interval> alarms;
    for (Interval const& interval : intervals) {
        std::erase_if(alarms, [&](Interval const& old) { return same_vessels(old, interval); });
        if (interval.alarm || interval.ran_empty) alarms.push_back(interval);
    }
    return alarms;
}

std::vector<Interval> Lessons::alarms(std::vector<std::string> const& hatches,
                                      std::optional<domain::Moment> moment) const {
    constexpr Duration week = days(7);
    auto asked = alarms();
    std::erase_if(asked, [&](Interval const& alarm) {
        bool const stale = moment && *moment - alarm.to > week;
        return stale || std::find(hatches.begin(), hatches.end(), alarm.hatch) == hatches.end();
    });
    return asked;
}

std::vector<domain::Caution> Lessons::cautions() const {
    constexpr char source[] = "the diary beside the farm file";
    std::vector<domain::Caution> cautions;
    if (!strangers.empty()) {
        cautions.push_back({"diary-unknown-hatches",
                            "The diary names hatches this farm file has not, and what it says of them is left out: " +
                                domain::join(strangers) +
                                ". Was one renamed? Give it its old name, or export the diary, change the name there, "
                                "put the diary aside and import what you changed.",
                            source});
    }
    if (misdated > 0) {
        cautions.push_back({"diary-outside-life",
                            "Entries of the diary from before their hatch or after its end are left out: " +
                                std::to_string(misdated) + ". A slip in a date?",
                            source});
    }
    return cautions;
}

Lessons learn(domain::Farm const& farm, Rations const& rations, domain::Diary const& whole) {
    Lessons lessons{farm, Belief(farm.hatches.size()), {}, {}, 0, strangers(farm, whole)};
    auto const named = std::count_if(whole.begin(), whole.end(), [&](domain::Entry const& entry) {
        return std::find(lessons.strangers.begin(), lessons.strangers.end(), entry.hatch) == lessons.strangers.end();
    });
    domain::Diary const diary = in_their_time(farm, whole);
    lessons.misdated = static_cast<int>(named) - static_cast<int>(diary.size());
    record_heads(lessons.farm, diary);
    for (Measured const& measured : intervals(lessons.farm, rations, diary)) take_in(lessons, measured);
    for (std::size_t flock = 0; flock < farm.hatches.size(); ++flock) {
        auto learned = learned_of(lessons, flock, rations, diary);
        if (says_something(learned)) lessons.learned.push_back(std::move(learned));
    }
    return lessons;
}

}  // namespace cropful::engine
