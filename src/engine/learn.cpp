#include "cropful/engine/learn.hpp"

#include <algorithm>
#include <cmath>

#include "engine/deaths.hpp"
#include "engine/heads.hpp"
#include "engine/intervals.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// Whether an interval says how much healthy birds use.
bool is_measure(Interval const& interval) {
    return !interval.ran_empty && !interval.miscounted && !interval.over_thrown;
}

/// How far off an interval was, by what is believed.
void judge_interval(Interval& interval, Measured const& measured, Belief const& belief) {
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
    judge_interval(interval, measured, lessons.belief);
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

constexpr double few_left = 0.05;  // of a flock: so few that they may be none; chosen here, no source

/// Removals of the file that the diary's heads no longer allow.
void too_few_left(Lessons& lessons, Rations const& rations) {
    constexpr Duration instant = days(1e-9);
    for (domain::Hatch const& hatch : lessons.farm.hatches) {
        if (hatch.heads.empty()) continue;
        Flock const flock(hatch, rations.kinds.at(hatch.kind));
        domain::HeadRecord const& last = hatch.heads.back();
        double const there = in_birds(flock.alive(last.at)), before = there + in_birds(last.birds);
        if (last.what == domain::HeadRecord::What::moved && there > 0 && there <= few_left * before) {
            lessons.heads.push_back({.id = "diary-heads",
                                     .hatches = {hatch.name},
                                     .with = {{"form", "few left"},
                                              {"moved", last.birds},
                                              {"before", birds(before)},
                                              {"day", hatch.date + last.at},
                                              {"left", birds(there)}},
                                     .source = of_the_diary});
        }
        for (domain::Removal const& removal : hatch.removed) {
            Heads const left = flock.alive(removal.at - instant);
            if (removal.at < hatch.heads.back().at || removal.birds <= left + birds(0.5)) continue;
            lessons.heads.push_back({.id = "diary-heads",
                                     .hatches = {hatch.name},
                                     .with = {{"form", "removal over"},
                                              {"leave", removal.birds},
                                              {"day", hatch.date + removal.at},
                                              {"left", left}},
                                     .source = of_the_diary});
            break;
        }
    }
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
    std::vector<domain::Caution> cautions;
    if (!strangers.empty()) {
        cautions.push_back({.id = "diary-unknown-hatches", .with = {{"names", strangers}}, .source = of_the_diary});
    }
    if (misdated > 0) {
        cautions.push_back(
            {.id = "diary-outside-life", .with = {{"entries", static_cast<double>(misdated)}}, .source = of_the_diary});
    }
    cautions.insert(cautions.end(), heads.begin(), heads.end());
    for (Interval const& interval : intervals) {
        if (!interval.over_thrown) continue;
        cautions.push_back({.id = "diary-over-thrown",
                            .hatches = {interval.hatch},
                            .with = {{"form", interval.what == Trait::feed ? "feed" : "water"},
                                     {"from", interval.from},
                                     {"to", interval.to}},
                            .source = of_the_diary});
    }
    return cautions;
}

Belief untaught(domain::Farm const& farm, Rations const& rations) {
    std::vector<Kin> flocks;
    for (domain::Hatch const& hatch : farm.hatches) {
        Kind const& kind = rations.kinds.at(hatch.kind);
        flocks.push_back({kind.key, kind.growing.model_only ? Belief::shared_by_model : Belief::shared_by_kind,
                          rate_unknown(hatch)});
    }
    return Belief(std::move(flocks));
}

Lessons learn(domain::Farm const& farm, Rations const& rations, domain::Diary const& whole) {
    domain::Diary barn = whole;
    std::erase_if(barn, [](domain::Entry const& entry) {
        bool const of_no_vessel = std::holds_alternative<Heads>(entry.amount);
        return domain::is_of_store(entry.deed) || (domain::counts_anything(entry.deed) && of_no_vessel);
    });
    Lessons lessons{farm, untaught(farm, rations), {}, {}, 0, strangers(farm, barn)};
    lessons.store = store_counts(farm, whole);
    auto const named = std::count_if(barn.begin(), barn.end(), [&](domain::Entry const& entry) {
        return std::find(lessons.strangers.begin(), lessons.strangers.end(), entry.hatch) == lessons.strangers.end();
    });
    domain::Diary const diary = in_their_time(farm, barn);
    lessons.misdated = static_cast<int>(named) - static_cast<int>(diary.size());
    lessons.heads = record_heads(lessons.farm, diary);
    for (domain::Caution& one : too_many_deaths(lessons.farm, rations)) lessons.heads.push_back(std::move(one));
    too_few_left(lessons, rations);
    lessons.levels = levels(lessons.farm, diary);
    for (Measured const& measured : intervals(lessons.farm, rations, diary)) take_in(lessons, measured);
    for (std::size_t flock = 0; flock < farm.hatches.size(); ++flock) {
        auto learned = learned_of(lessons, flock, rations, diary);
        if (says_something(learned)) lessons.learned.push_back(std::move(learned));
    }
    return lessons;
}

}  // namespace cropful::engine
