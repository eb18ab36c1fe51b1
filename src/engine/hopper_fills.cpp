#include <utility>

#include "engine/fill.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// One feed in one stage.
struct Feeding {
    domain::Feed const& feed;
    Duration from;
    Duration to;
};

std::vector<Feeding> feedings(Tended const& tended, Lodging const& lodging) {
    std::vector<Feeding> all;
    for (std::size_t i = 0; i < tended.hatch.feeding.size(); ++i) {
        Duration const from = std::max(lodging.from, tended.hatch.feeding[i].from);
        Duration const to = std::min(lodging.to, fed_until(tended.hatch, i));
        if (from + instant < to) all.push_back({tended.farm.feeds.at(tended.hatch.feeding[i].feed), from, to});
    }
    return all;
}

/// The fills of a stage's hoppers, feed by feed.
class Hoppers {
  public:
    Hoppers(Tended& tended, Lodging const& lodging, BandedUsage<Mass> const& usage, Use const& hungry,
            Rations const& rations)
        : tended_(tended),
          hopper_(tended.farm.hoppers.at(*lodging.stage.hopper)),
          count_(lodging.hoppers()),
          stage_from_(lodging.from),
          usage_(usage),
          hungry_(hungry),
          rations_(rations) {}

    void feed(Feeding const& one) {
        Mass const brim = hopper_content(hopper_, one.feed, rations_) * static_cast<double>(count_);
        Mass const behind = stays_behind(hopper_, one.feed, rations_) * static_cast<double>(count_);
        refuse_countless(hopper_.key, usage_, brim, {one.from, one.to});
        Mass left = kilograms(0);
        Mass first = behind;  // goes in once
        Duration begin = one.from;
        if (auto const known = start_in_date(tended_, tended_.feed, usage_, brim, one.from, one.to)) {
            Duration const due = due_at(*known);
            bool const late = tended_.now && due + instant < *tended_.now;
            begin = std::min(late ? *tended_.now : due, one.to);
            if (late) due_ = tended_.hatch.date + due;
            left = left_of(*known, begin, one.to);
            first = kilograms(0);
            if (tended_.begun < begin + instant) {
                result_.account[one.feed.key].held = left_of(*known, tended_.begun, one.to);
            }
        }
        if (change_is_late(one, brim)) {
            begin = *tended_.now;
            due_ = tended_.hatch.date + one.from;
        }
        for (Duration now = begin; now + instant < one.to;) {
            Round const round = plan_round(now, one.to, brim, left);
            auto fill = fill_at(tended_, usage_, count_, round.level / static_cast<double>(count_), now);
            Duration next = round.next;
            if (round.to_the_brim && fill.lasts.p05) {
                next = std::min(next, in_time(tended_.chores, now, now + *fill.lasts.p05));
                if (next > now + *fill.lasts.p05 + instant) {
                    Mass const need = usage_.band(now, next).p95;
                    fill.would_do = vessels_for(need, brim / static_cast<double>(count_), count_);
                }
            }
            fill.put_in = round.level - left + first;
            fill.brim = brim / static_cast<double>(count_);
            fill.share_of_full = ratio((round.level + behind) / (brim + behind));
            fill.fresh = now <= one.from + instant;
            left = round.level - hungry_mass(now, next);
            bool const last = !(next + instant < one.to);
            if (last && left < kilograms(0)) fill.put_in += -left;  // what more vessels would have held
            add(std::move(fill), next, first, one.feed.key);
            first = kilograms(0);
            now = next;
        }
    }

    HopperFills result() && { return std::move(result_); }

  private:
    /// What one visit leaves in all the hoppers, and the last age at which the next may come.
    struct Round {
        Mass level;
        Duration next;
        bool to_the_brim = false;
    };

    /// What of it is left at an age, and will be eaten before another feed or the end.
    [[nodiscard]] Mass left_of(Start<Mass> const& known, Duration age, Duration end) const {
        return std::clamp(known.content - hungry_mass(known.age, age), kilograms(0), hungry_mass(age, end));
    }

    /// Whether a change to a feed is still to be made: the diary knows the hoppers before it, says nothing since, and
    /// is not out of date.
    [[nodiscard]] bool change_is_late(Feeding const& one, Mass brim) const {
        if (!tended_.now || !tended_.feed || !(one.from + instant < *tended_.now) || !(*tended_.now < one.to)) {
            return false;
        }
        auto const known = known_start(tended_, tended_.feed, brim, stage_from_, one.from);
        if (!known) return false;
        auto const sure = usage_.gone_after(known->age, known->content).p05;
        return !sure || *tended_.now <= known->age + *sure;
    }

    /// The chore at which they are next to be filled.
    [[nodiscard]] Duration due_at(Start<Mass> const& known) const {
        Duration next = known.age + hopper_.fill_for.value_or(wholesome(hopper_, known.age));
        if (auto const sure = usage_.gone_after(known.age, known.content).p05) next = std::min(next, known.age + *sure);
        return in_time(tended_.chores, known.age, next);
    }

    [[nodiscard]] Round plan_round(Duration now, Duration end, Mass brim, Mass left) const {
        Duration const stands = hopper_.fill_for.value_or(wholesome(hopper_, now));
        Duration const next = std::min(end, in_time(tended_.chores, now, now + stands));
        Mass const to_the_end = hungry_mass(now, end);
        bool const last = !(next + instant < end);
        if (last && to_the_end <= brim) return {to_the_end, end};
        Mass const safe = std::min(std::max(usage_.band(now, next).p95, hungry_mass(now, next)), to_the_end);
        if (!(safe < brim)) return {brim, next, true};
        return {std::max(safe, left), next};
    }

    [[nodiscard]] Mass hungry_mass(Duration from, Duration to) const { return kilograms(hungry_(from, to)); }

    /// `behind` is what of it stays out of reach.
    void add(Fill<Mass> fill, Duration next, Mass behind, std::string const& feed) {
        FeedAccount& account = result_.account[feed];
        auto& fills = result_.vessels.fills;
        if (std::ssize(fills) >= most_fills) throw too_many_fills(hopper_.key);
        if (fill.age + instant < tended_.begun) {
            Mass const held = fill.content * static_cast<double>(count_) - hungry_mass(fill.age, tended_.begun);
            if (tended_.begun < next + instant) account.held = held;  // a fill at the very start is listed
            auto const counted = tended_.counted.find(feed);
            if (counted != tended_.counted.end() && counted->second < fill.age) account.taken += fill.put_in;
            return;
        }
        account.put_in += fill.put_in - behind;
        account.stays_behind += behind;
        fill.until = tended_.hatch.date + next;
        fill.due = std::exchange(due_, std::nullopt);
        fill.used = usage_.central.between(fill.age, next) / static_cast<double>(count_);
        fills.push_back(std::move(fill));
    }

    Tended& tended_;
    domain::Hopper const& hopper_;
    int count_;
    Duration stage_from_;
    BandedUsage<Mass> const& usage_;
    Use const& hungry_;
    Rations const& rations_;
    std::optional<Moment> due_{};  // of the fill that comes next, where it is late
    HopperFills result_{{hopper_.key, count_, {}}};
};

}  // namespace

MassPerVolume bulk_density(domain::Feed const& feed, Rations const& rations) {
    if (feed.density) return *feed.density;
    return rations.forms.at(domain::name(feed.form.value_or(domain::Form::crumble))).density[1];
}

Mass hopper_content(domain::Hopper const& hopper, domain::Feed const& feed, Rations const& rations) {
    return hopper.volume * bulk_density(feed, rations) * hopper.fill * (1 - hopper.stays_behind);
}

Mass stays_behind(domain::Hopper const& hopper, domain::Feed const& feed, Rations const& rations) {
    return hopper.volume * bulk_density(feed, rations) * hopper.fill * hopper.stays_behind;
}

Duration usually_wholesome(Duration age) {
    // common practice; the extension page in stale_feed.cpp speaks of feed three weeks from its making, sooner in heat
    return age < days(21) ? days(7) : days(14);
}

Duration wholesome(domain::Hopper const& hopper, Duration age) {
    return hopper.at_most.value_or(usually_wholesome(age));
}

HopperFills hopper_fills(Tended& tended, Lodging const& lodging, BandedUsage<Mass> const& usage, Use const& hungry,
                         Rations const& rations) {
    Hoppers hoppers(tended, lodging, usage, hungry, rations);
    for (Feeding const& one : feedings(tended, lodging)) {
        bool const counts = tended.counted.contains(one.feed.key);  // what was put in before is off the store
        if (tended.begun < one.to || counts) hoppers.feed(one);
    }
    return std::move(hoppers).result();
}

Vessels<Mass> full_hoppers(Tended const& tended, Lodging const& lodging, BandedUsage<Mass> const& usage,
                           Rations const& rations, Duration age) {
    domain::Hopper const& hopper = tended.farm.hoppers.at(*lodging.stage.hopper);
    Vessels<Mass> full{hopper.key, lodging.hoppers(), {}};
    for (Feeding const& one : feedings(tended, lodging)) {
        if (age + instant < one.from || one.to <= age + instant) continue;
        Mass const content = hopper_content(hopper, one.feed, rations);
        Mass const brim = content * static_cast<double>(full.count);
        auto const start = known_start(tended, tended.feed, brim, one.from, one.to).value_or(Start<Mass>{age, brim});
        auto fill = fill_at(tended, usage, full.count, start.content / static_cast<double>(full.count), start.age);
        fill.content = std::min(fill.content, content);  // of what was put in later some had been eaten
        fill.brim = content;
        fill.until = tended.hatch.date + std::min(one.to, start.age + fill.empty_after.value_or(one.to - start.age));
        full.fills.push_back(std::move(fill));
    }
    return full;
}

}  // namespace cropful::engine
