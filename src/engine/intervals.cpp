#include "engine/intervals.hpp"

#include <algorithm>
#include <cmath>

#include "engine/usage.hpp"

namespace cropful::engine {

namespace {

using domain::Deed;
using domain::Entry;
using domain::Moment;

constexpr double least_share = 0.01;     // of the table's use: a use of nothing has no logarithm
constexpr double least_days = 1 / 24.0;  // shorter than an hour says nothing

/// What the table foretells for one hatch's hoppers or drinkers, and how it goes with the feed score.
struct Table {
    Use use;       // kg or L
    Use weighted;  // the same, each moment's times its sd of feed
    double water;  // sd of the ratio of water to feed; 0 for feed
};

Table table_of(domain::Farm const& farm, domain::Hatch const& hatch, Kind const& kind, Trait what) {
    Flock const flock(hatch, kind);
    Intake const intake(farm, hatch, kind);
    Factor const sd = [intake](double age) { return intake.feed_sd(days(age)); };
    if (what == Trait::feed) {
        double const waste = hatch.hopper ? farm.hoppers.at(*hatch.hopper).extra_waste : 0;
        return {amounts_of(feed_usage(flock, intake, waste)), amounts_of(feed_usage(flock, intake, waste, sd)), 0};
    }
    double const spill = hatch.drinker ? farm.drinkers.at(*hatch.drinker).spill : 0;
    return {amounts_of(water_usage(flock, intake, spill)), amounts_of(water_usage(flock, intake, spill, sd)),
            intake.water_sd()};
}

/// The amount of an entry that belongs to hoppers (feed) or drinkers (water), in kg or L.
std::optional<double> amount_of(Entry const& entry, Trait what) {
    if (auto const* mass = std::get_if<Mass>(&entry.amount); mass && what == Trait::feed) return in_kilograms(*mass);
    if (auto const* water = std::get_if<Volume>(&entry.amount); water && what == Trait::water) return in_litres(*water);
    return std::nullopt;
}

/// Follows one hatch's hoppers or drinkers through the diary.
class Tally {
  public:
    Tally(domain::Hatch const& hatch, std::size_t flock, Trait what, Table table)
        : hatch_(hatch), flock_(flock), what_(what), table_(std::move(table)) {}

    void see(Entry const& entry, std::vector<Measured>& measured) {
        auto const amount = amount_of(entry, what_);
        if (!amount) return;
        if (entry.deed == Deed::found_empty) empty_ = true;
        if (entry.deed == Deed::thrown_out) used_ -= *amount;
        if (entry.deed == Deed::part_filled || entry.deed == Deed::topped_up) used_ += *amount;
        if (entry.deed == Deed::topped_up) close(entry.at, measured);
    }

  private:
    void close(Moment at, std::vector<Measured>& measured) {
        if (full_ && in_days(at - *full_) >= least_days) add(at, measured);
        full_ = at;
        used_ = 0;
        empty_ = false;
    }

    void add(Moment at, std::vector<Measured>& measured) const {
        Duration const from = std::max(*full_ - hatch_.date, hatch_.first_age), to = at - hatch_.date;
        double const table = from < to ? table_.use(from, to) : 0;
        if (!(table > 0)) return;  // before there were birds, or after
        double const off = std::log(std::max(used_, least_share * table) / table);
        Interval const interval{.hatch = hatch_.name,
                                .what = what_,
                                .from = *full_,
                                .to = at,
                                .used = used_,
                                .table = table,
                                .expected = table,
                                .sds = 0,
                                .ran_empty = empty_};
        measured.push_back({interval, off, {flock_, table_.weighted(from, to) / table, table_.water}});
    }

    domain::Hatch const& hatch_;
    std::size_t flock_;
    Trait what_;
    Table table_;
    std::optional<Moment> full_;
    double used_ = 0;  // since then
    bool empty_ = false;
};

}  // namespace

std::vector<Measured> intervals(domain::Farm const& farm, Rations const& rations, domain::Diary const& diary) {
    std::vector<Measured> measured;
    for (std::size_t flock = 0; flock < farm.hatches.size(); ++flock) {
        domain::Hatch const& hatch = farm.hatches[flock];
        for (Trait const what : {Trait::feed, Trait::water}) {
            Tally tally(hatch, flock, what, table_of(farm, hatch, rations.kinds.at(hatch.kind), what));
            for (Entry const& entry : diary) {
                if (entry.hatch == hatch.name) tally.see(entry, measured);
            }
        }
    }
    std::stable_sort(measured.begin(), measured.end(),
                     [](Measured const& a, Measured const& b) { return a.interval.to < b.interval.to; });
    return measured;
}

}  // namespace cropful::engine
