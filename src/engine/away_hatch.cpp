#include "engine/away_hatch.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/domain/ranges.hpp"
#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/away_cautions.hpp"
#include "engine/hatch_model.hpp"
#include "engine/intake.hpp"
#include "engine/quantile.hpp"
#include "engine/refills.hpp"
#include "engine/rounding.hpp"
#include "engine/run_out.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double pieces_each = 5;   // at least, of the absence, and as many of the time after it
constexpr double far_enough = 1.8;  // run-outs are followed until central use is so many times the content
constexpr double sure_end = 0.95;
constexpr double most_more = 100000;  // vessels nobody adds: their size is a slip

/// The hatch as it is while nobody is there: on the feed of that age, and no bird leaves.
domain::Hatch left_alone(domain::Hatch hatch, Ages ages) {
    while (hatch.feeding.size() > 1 && hatch.feeding.back().from > ages.from + instant) hatch.feeding.pop_back();
    std::erase_if(hatch.removed,
                  [&](domain::Removal const& removal) { return removal.at > ages.from && removal.at < ages.to; });
    hatch.until = std::max(hatch.until, ages.to);
    return hatch;
}

/// Vessels of one sort of a hatch, before and while they are followed.
struct Vessel {
    std::string key;
    int count;
    domain::Amount content;       // of one
    double behind;                // beyond that and out of the birds' reach, as a share of it
    double least;                 // below which birds get nothing, as a share of it
    double all;                   // that all hold, in kg or L
    RunOut run_out;               // from the start of the absence, full then
    std::optional<RunOut> known;  // from when the diary last knew them, as they were then
    Duration since{};             // that age
    bool of_batch = false;
    std::vector<double> shares{};  // of the full ones used at the end of the absence
    [[nodiscard]] RunOut& judged() { return known ? *known : run_out; }
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
    Group(Season const& season, std::size_t number, Ages ages, bool as_they_are)
        : farm_(season.farm()),
          hatch_(left_alone(farm_.hatches[number], ages)),
          kind_(season.kind(number)),
          flock_(hatch_, kind_),
          intake_(farm_, hatch_, kind_, nature(season.lessons().belief, number)),
          spread_(hatch_, kind_, intake_),
          sway_(spread_, season.lessons().belief, season.draws(), number),
          tended_{.farm = farm_,
                  .hatch = season.hatch(number).hatch(),
                  .flock = season.hatch(number).flock(),
                  .chores = ChoresByAge(farm_, season.hatch(number).hatch()),
                  .begun = ages.from},
          ages_(ages) {
        Lodging const* lodging = lodging_at(season.hatch(number).lodgings(), ages.from);
        if (lodging == nullptr) return;
        if (as_they_are) {
            tended_.feed = season.hatch(number).levels().feed;
            tended_.water = season.hatch(number).levels().water;
        }
        auto const& hopper = lodging->stage.hopper;
        auto const& drinker = lodging->stage.drinker;
        if (hopper) add_hoppers(farm_.hoppers.at(*hopper), *lodging, season.rations());
        if (drinker && !farm_.drinkers.at(*drinker).plumbed) {
            add_drinkers(farm_.drinkers.at(*drinker), *lodging, season.hatch(number));
        }
    }

    void judge(Absence const& absence, std::vector<Followed>& all) {
        for (Vessel& vessel : vessels_) catch_up(vessel);
        follow(ages_.from, ages_.to);
        for (Vessel& vessel : vessels_) vessel.shares = vessel.run_out.shares();
        std::vector<std::vector<double>> gone;
        for (Vessel& vessel : vessels_) gone.push_back(vessel.judged().shares());
        follow(ages_.to, horizon());
        for (std::size_t i = 0; i < vessels_.size(); ++i) all.push_back(followed(vessels_[i], gone[i], absence));
    }

  private:
    void add_hoppers(domain::Hopper const& hopper, Lodging const& lodging, Rations const& rations) {
        Mass const content = hopper_content(hopper, intake_.eaten(ages_.from + instant), rations);
        int const count = lodging.hoppers();
        double const all = in_kilograms(content) * count;
        auto const use = amounts_of(feed_usage(flock_, intake_, hopper.extra_waste));
        vessels_.push_back({hopper.key, count, content, hopper.stays_behind / (1 - hopper.stays_behind), 0, all,
                            RunOut(use, rooms(all, sway_.room(), false)), std::nullopt});
        Duration const fed_since = std::max(lodging.from, hatch_.feeding.back().from);
        auto const known = known_start(tended_, tended_.feed, content * static_cast<double>(count), fed_since,
                                       ages_.from + instant * 2.0);
        if (!known) return;
        vessels_.back().known.emplace(use, rooms(in_kilograms(known->content), sway_.room(), false));
        vessels_.back().since = known->age;
    }

    void add_drinkers(domain::Drinker const& drinker, Lodging const& lodging, HatchModel const& model) {
        Volume const brim = drinker.volume - drinker.displaced;
        Volume const content = leaves_plain() ? brim : filled(drinker, lodging, model, ages_.from);
        int const count = lodging.drinkers();
        double const all = in_litres(content) * count;
        auto const use = amounts_of(water_usage(flock_, intake_, drinker.spill));
        vessels_.push_back({drinker.key, count, content, 0, ratio(drinker.least / content), all,
                            RunOut(use, rooms(all, sway_.water(), true)), std::nullopt});
        vessels_.back().of_batch = content < brim;
        if (!tended_.water) return;
        Volume const then = filled(drinker, lodging, model, tended_.water->at - hatch_.date);
        auto const known = known_start(tended_, tended_.water, then * static_cast<double>(count), lodging.from,
                                       ages_.from + instant * 2.0);
        if (!known) return;
        vessels_.back().known.emplace(use, rooms(in_litres(known->content), sway_.water(), true));
        vessels_.back().since = known->age;
    }

    /// Whether plain water is left.
    [[nodiscard]] bool leaves_plain() const {
        return ranges::any_of(domain::courses_of(hatch_, farm_), [&](domain::Course const& one) {
            return is_broken_off(one, farm_.supplements.at(one.supplement), ages_);
        });
    }

    /// What one drinker holds when somebody fills it at an age: a batch during a course.
    Volume filled(domain::Drinker const& drinker, Lodging const& lodging, HatchModel const& model, Duration age) const {
        auto const courses = domain::courses_of(model.hatch(), farm_);
        bool const given = ranges::any_of(courses, [&](domain::Course const& one) {
            return one.from < age + days(1) && age < course_ends(one) + days(1);
        });
        Volume const brim = drinker.volume - drinker.displaced;
        bool const there = lodging.from <= age + instant && age + instant < lodging.to;
        if (!given || !there) return brim;
        Tended tended = tended_;
        tended.water.reset();
        return full_drinkers(tended, lodging, model.drinker_water(), courses, age).fills.front().content;
    }

    /// Follows what the diary knows to the start of the absence. What would be empty by then for certain was filled
    /// since, and the diary is out of date.
    void catch_up(Vessel& vessel) {
        if (!vessel.known) return;
        if (vessel.since + instant < ages_.from) {
            std::vector<double> factors;
            for (Piece const& piece :
                 pieces(flock_, intake_, vessel.since, ages_.from, (ages_.from - vessel.since) / pieces_each)) {
                sway_.feed((piece.from + piece.to) / 2.0, factors);
                vessel.known->pass(piece, factors);
            }
        }
        auto shares = vessel.known->shares();
        if (!(quantile(shares, sure_end) < 1)) vessel.known.reset();
    }

    void follow(Duration from, Duration to) {
        if (vessels_.empty() || !(from < to)) return;
        std::vector<double> factors;
        for (Piece const& piece : pieces(flock_, intake_, from, to, (to - from) / pieces_each)) {
            sway_.feed((piece.from + piece.to) / 2.0, factors);
            for (Vessel& vessel : vessels_) {
                vessel.run_out.pass(piece, factors);
                if (vessel.known) vessel.known->pass(piece, factors);
            }
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

    Followed followed(Vessel& vessel, std::vector<double> const& gone, Absence const& absence) const {
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
                     vessel.judged().empty()};
        one.holding.known = vessel.known.has_value();
        one.holding.of_batch = vessel.of_batch;
        auto const held = ranges::count_if(gone, [](double share) { return share < 1; });
        one.holding.chance = static_cast<double>(held) / static_cast<double>(gone.size());
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
    Tended tended_;
    Ages ages_;
    std::vector<Vessel> vessels_;
};

}  // namespace

void follow_hatch(Season const& season, std::size_t number, Ages ages, Absence const& absence,
                  std::vector<Followed>& all) {
    Group(season, number, ages, absence.as_they_are).judge(absence, all);
}

}  // namespace cropful::engine
