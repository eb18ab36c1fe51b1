#include "cropful/engine/away.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/assumptions.hpp"
#include "engine/away_cautions.hpp"
#include "engine/errands.hpp"
#include "engine/hatch_model.hpp"
#include "engine/intake.hpp"
#include "engine/quantile.hpp"
#include "engine/refills.hpp"
#include "engine/rounding.hpp"
#include "engine/run_out.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double pieces_each = 5;     // at least, of the absence, and as many of the time after it
constexpr double far_enough = 1.8;    // run-outs are followed until central use is so many times the content
constexpr double most_more = 100000;  // vessels nobody adds: their size is a slip

/// The hatch as it is while nobody is there: on the feed of that age, and no bird leaves.
domain::Hatch left_alone(domain::Hatch hatch, Ages ages) {
    while (hatch.feeding.size() > 1 && hatch.feeding.back().from > ages.from + instant) hatch.feeding.pop_back();
    std::erase_if(hatch.removed,
                  [&](domain::Removal const& removal) { return removal.at > ages.from && removal.at < ages.to; });
    hatch.until = std::max(hatch.until, ages.to);
    return hatch;
}

/// A holding and when it is empty in each world, in days after the absence begins.
struct Followed {
    Holding holding;
    std::vector<double> empty;
};

/// Vessels of one sort of a hatch, before and while they are followed.
struct Vessel {
    std::string key;
    int count;
    domain::Amount content;  // of one
    double behind;           // beyond that and out of the birds' reach, as a share of it
    double least;            // below which birds get nothing, as a share of it
    double all;              // that all hold, in kg or L
    RunOut run_out;
    std::vector<double> shares;  // used at the end of the absence
};

std::vector<double> rooms(double all, std::vector<double> rooms, bool shrinks) {
    for (double& room : rooms) room = shrinks ? all / room : all * room;
    return rooms;
}

domain::Amount scaled(domain::Amount const& amount, double by) {
    return std::visit([by](auto const& one) { return domain::Amount(one * by); }, amount);
}

/// One hatch during the absence, in every world.
class Group {
  public:
    Group(Season const& season, std::size_t number, Ages ages)
        : farm_(season.farm()),
          hatch_(left_alone(farm_.hatches[number], ages)),
          kind_(season.kind(number)),
          flock_(hatch_, kind_),
          intake_(farm_, hatch_, kind_, nature(season.lessons().belief, number)),
          spread_(hatch_, kind_, intake_),
          sway_(spread_, season.lessons().belief, season.draws(), number),
          ages_(ages) {
        Lodging const* lodging = lodging_at(season.hatch(number).lodgings(), ages.from);
        if (lodging == nullptr) return;
        auto const& hopper = lodging->stage.hopper;
        auto const& drinker = lodging->stage.drinker;
        if (hopper) add_hoppers(farm_.hoppers.at(*hopper), lodging->hoppers(), season.rations());
        if (drinker && !farm_.drinkers.at(*drinker).plumbed)
            add_drinkers(farm_.drinkers.at(*drinker), lodging->drinkers());
    }

    void judge(Absence const& absence, std::vector<Followed>& all) {
        follow(ages_.from, ages_.to);
        for (Vessel& vessel : vessels_) vessel.shares = vessel.run_out.shares();
        follow(ages_.to, horizon());
        for (Vessel& vessel : vessels_) all.push_back(followed(vessel, absence));
    }

  private:
    void add_hoppers(domain::Hopper const& hopper, int count, Rations const& rations) {
        Mass const content = hopper_content(hopper, intake_.eaten(ages_.from + instant), rations);
        double const all = in_kilograms(content) * count;
        auto const use = amounts_of(feed_usage(flock_, intake_, hopper.extra_waste));
        vessels_.push_back({hopper.key,
                            count,
                            content,
                            hopper.stays_behind / (1 - hopper.stays_behind),
                            0,
                            all,
                            RunOut(use, rooms(all, sway_.room(), false)),
                            {}});
    }

    void add_drinkers(domain::Drinker const& drinker, int count) {
        Volume const content = drinker.volume - drinker.displaced;
        double const all = in_litres(content) * count;
        auto const use = amounts_of(water_usage(flock_, intake_, drinker.spill));
        vessels_.push_back({drinker.key,
                            count,
                            content,
                            0,
                            ratio(drinker.least / content),
                            all,
                            RunOut(use, rooms(all, sway_.water(), true)),
                            {}});
    }

    void follow(Duration from, Duration to) {
        if (vessels_.empty() || !(from < to)) return;
        std::vector<double> factors;
        for (Piece const& piece : pieces(flock_, intake_, from, to, (to - from) / pieces_each)) {
            sway_.feed((piece.from + piece.to) / 2.0, factors);
            for (Vessel& vessel : vessels_) vessel.run_out.pass(piece, factors);
        }
    }

    /// An age by which nearly every world's vessels are empty; at most five years on.
    [[nodiscard]] Duration horizon() const {
        Duration far = ages_.to;
        for (Vessel const& vessel : vessels_) {
            Duration ahead = days(1);
            while (vessel.run_out.use(ages_.from, ages_.from + ahead) < far_enough * vessel.all &&
                   ahead < domain::longest_life) {
                ahead *= 1.5;
            }
            far = std::max(far, ages_.from + std::min(ahead, domain::longest_life));
        }
        return far;
    }

    Followed followed(Vessel& vessel, Absence const& absence) const {
        Followed one{{.hatch = hatch_.name,
                      .vessel = vessel.key,
                      .count = vessel.count,
                      .from = hatch_.date + ages_.from,
                      .age = ages_.from,
                      .birds = flock_.alive(ages_.from),
                      .content = vessel.content,
                      .leave = vessel.content,
                      .lasts = {},
                      .safe_for = {}},
                     vessel.run_out.empty()};
        auto const held =
            std::count_if(vessel.shares.begin(), vessel.shares.end(), [](double share) { return share < 1; });
        one.holding.chance = static_cast<double>(held) / static_cast<double>(vessel.shares.size());
        one.holding.fill = quantile(vessel.shares, absence.sure);
        double const share = std::max(one.holding.fill, vessel.least) + vessel.behind;
        one.holding.leave = scaled(vessel.content, share);
        one.holding.full = share / (1 + vessel.behind);
        one.holding.more = more_of(vessel, one.holding.fill);
        for (double& time : one.empty) time -= in_days(ages_.from);
        auto sample = one.empty;
        one.holding.safe_for = some(quantile(sample, 1 - absence.sure));
        auto const lasts = band(sample);
        one.holding.lasts = {some(lasts.p05), some(lasts.p50), some(lasts.p95)};
        for (double& time : one.empty) time += in_days(one.holding.from - absence.from);
        return one;
    }

    /// Vessels to add so that all of them hold `fill` times what they do.
    static int more_of(Vessel const& vessel, double fill) {
        double const more = std::ceil(vessel.count * fill - rounding) - vessel.count;
        if (more > most_more) {
            throw NoAnswer(vessel.key + ": holds so little that more than " + number(most_more, 0) +
                           " more would be needed; check its size and the number of birds");
        }
        return whole_number(std::max(more, 0.0));
    }

    static std::optional<Duration> some(double time) {
        return std::isfinite(time) ? std::optional(days(time)) : std::nullopt;
    }

    domain::Farm const& farm_;
    domain::Hatch hatch_;
    Kind const& kind_;
    Flock flock_;
    Intake intake_;
    Spread spread_;
    Sway sway_;
    Ages ages_;
    std::vector<Vessel> vessels_;
};

std::vector<Followed> follow_all(Season const& season, Absence const& absence) {
    std::vector<Followed> all;
    for (std::size_t i = 0; i < season.farm().hatches.size(); ++i) {
        domain::Hatch const& hatch = season.farm().hatches[i];
        if (!absence.hatches.holds(hatch.name)) continue;
        Ages const ages{std::max(hatch.first_age, absence.from - hatch.date), absence.until - hatch.date};
        if (!(ages.from + instant < std::min(hatch.until, ages.to))) continue;
        if (in_birds(season.hatch(i).flock().alive(ages.from)) < 0.5) continue;  // all gone
        need_laying_rate(hatch, season.kind(i), ages.to + look_ahead);
        Group(season, i, ages).judge(absence, all);
    }
    if (all.empty()) throw NoAnswer("no hatch with a hopper or a drinker has birds in that time");
    return all;
}

/// What holds for all vessels in the same worlds.
void judge_together(Away& away, std::vector<Followed> const& all) {
    double const end = in_days(away.absence.until - away.absence.from);
    std::size_t const worlds = all.front().empty.size();
    std::vector<double> soonest(worlds, RunOut::never);
    std::vector<int> times_first(all.size(), 0);
    for (std::size_t world = 0; world < worlds; ++world) {
        std::size_t first = 0;
        for (std::size_t i = 1; i < all.size(); ++i) {
            if (all[i].empty[world] < all[first].empty[world]) first = i;
        }
        soonest[world] = all[first].empty[world];
        if (std::isfinite(soonest[world])) ++times_first[first];
    }
    auto const most = std::max_element(times_first.begin(), times_first.end());
    if (*most > 0) away.first = static_cast<std::size_t>(most - times_first.begin());
    auto const held = std::count_if(soonest.begin(), soonest.end(), [&](double time) { return time >= end; });
    away.chance = static_cast<double>(held) / static_cast<double>(worlds);
    double const safe = quantile(soonest, 1 - away.absence.sure);
    if (!std::isfinite(safe)) return;
    away.come_by = away.absence.from + days(safe);
    away.come_at = Chores(away.farm).last_by(*away.come_by);
}

std::vector<Assumption> what_it_rests_on(Away const& away, Rations const& rations) {
    AssumptionList list;
    bool hoppers = false;
    for (domain::Hatch const& hatch : away.farm.hatches) {
        for (Holding const& holding : away.holdings) {
            if (holding.hatch != hatch.name) continue;
            auto const fed = std::find_if(hatch.feeding.rbegin(), hatch.feeding.rend(),
                                          [&](auto const& step) { return step.from <= holding.age + instant; });
            domain::Hatch meanwhile = hatch;
            meanwhile.until = away.absence.until - hatch.date;
            about_hatch(list, away.farm, meanwhile, {{fed->feed, holding.age, meanwhile.until}}, rations);
            hoppers = hoppers || domain::has_hopper(hatch);
        }
    }
    about_spread(list, away.farm, hoppers, !away.learned.empty());
    return list.all;
}

}  // namespace

Away away(Season const& season, Absence const& absence) {
    Lessons const& lessons = season.lessons();
    Rations const& rations = season.rations();
    auto const all = follow_all(season, absence);
    auto const calls = errands(lessons.farm, rations, absence);
    Away away{.absence = absence,
              .farm = lessons.farm,
              .holdings = {},
              .first = {},
              .come_by = {},
              .come_at = {},
              .errands = calls,
              .learned = lessons.learned,
              .alarms = {},
              .assumptions = {},
              .cautions = {}};
    std::vector<std::string> names;
    for (Followed const& one : all) {
        away.holdings.push_back(one.holding);
        names.push_back(one.holding.hatch);
    }
    away.alarms = lessons.alarms(names, absence.from);
    judge_together(away, all);
    away.assumptions = what_it_rests_on(away, rations);
    away.cautions = away_cautions(away, rations);
    for (Caution const& caution : lessons.cautions()) away.cautions.push_back(caution);
    return away;
}

}  // namespace cropful::engine
