#include "engine/intervals.hpp"

#include <algorithm>
#include <cmath>

#include "engine/lodging.hpp"
#include "engine/usage.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Deed;
using domain::Entry;
using domain::Moment;

constexpr double least_share = 0.01;     // of the table's use: a use of nothing has no logarithm
constexpr double least_days = 1 / 24.0;  // shorter than an hour says nothing

/// What the table foretells for one hatch's hoppers or drinkers, and how it goes with the feed score.
struct Foretold {
    Use use;       // kg or L
    Use weighted;  // the same, each moment's times its sd of feed
    double water;  // sd of the ratio of water to feed; 0 for feed
};

Foretold foretold_of(domain::Farm const& farm, domain::Hatch const& hatch, Kind const& kind, Trait what) {
    Flock const flock(hatch, kind);
    Intake const intake(farm, hatch, kind);
    Factor const sd = [intake](double age) { return intake.feed_sd(days(age)); };
    if (what == Trait::feed) {
        ByAge const waste = extra_waste(farm, hatch);
        return {amounts_of(feed_usage(flock, intake, waste)), amounts_of(feed_usage(flock, intake, waste, sd)), 0};
    }
    ByAge const spilt = spill(farm, hatch);
    return {amounts_of(water_usage(flock, intake, spilt)), amounts_of(water_usage(flock, intake, spilt, sd)),
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
    /// Before `counted` the heads reckoned with were far from those found.
    Tally(domain::Hatch const& hatch, std::size_t flock, Trait what, Foretold table, std::optional<Moment> counted)
        : hatch_(hatch), flock_(flock), what_(what), table_(std::move(table)), counted_(counted) {}

    void see(Entry const& entry) {
        auto const amount = amount_of(entry, what_);
        if (!amount) return;
        if (entry.deed == Deed::done) return forget();
        if (entry.deed == Deed::found_empty) empty_ = entry.at;
        if (entry.deed == Deed::thrown_out) used_ -= *amount;
        if (entry.deed == Deed::part_filled || entry.deed == Deed::topped_up) used_ += *amount;
        if (entry.deed == Deed::topped_up) close(entry.at);
    }

    /// The intervals; last, vessels found empty and not full since.
    std::vector<Measured> measured() && {
        if (empty_) measured_.push_back({interval(full_.value_or(*empty_), *empty_), 0, {flock_, 0, 0}});
        return std::move(measured_);
    }

  private:
    /// What went in was not measured: nothing is known of what was used until they are full again.
    void forget() {
        full_.reset();
        last_.reset();
        empty_.reset();
        used_ = 0;
    }

    /// Several top-ups within an hour are one: a line for each hopper.
    void close(Moment at) {
        bool const again = full_ && in_days(at - *full_) < least_days;
        if (again && last_) {
            if (last_->added) measured_.pop_back();
            used_ += last_->used;
            full_ = last_->from;
            if (last_->empty) empty_ = at;
        }
        if (full_ && (!again || last_)) {
            last_ = Last{*full_, used_, empty_.has_value(), add(at)};
        }
        full_ = at;
        used_ = 0;
        empty_.reset();
    }

    [[nodiscard]] Interval interval(Moment from, Moment to) const {
        return {.hatch = hatch_.name,
                .what = what_,
                .from = from,
                .to = to,
                .used = used_,
                .table = 0,
                .expected = 0,
                .sds = 0,
                .ran_empty = empty_.has_value(),
                .miscounted = counted_ && from < *counted_};
    }

    /// Whether the time since the vessels were full is one to speak of: birds were there.
    bool add(Moment at) {
        Duration const from = std::max(*full_ - hatch_.date, hatch_.first_age), to = at - hatch_.date;
        double const table = from < to ? table_.use(from, to) : 0;
        if (!(table > 0)) return false;
        Interval one = interval(*full_, at);
        one.table = one.expected = table;
        one.over_thrown = used_ < 0;
        double const off = one.over_thrown ? 0 : std::log(std::max(used_, least_share * table) / table);
        measured_.push_back({std::move(one), off, {flock_, table_.weighted(from, to) / table, table_.water}});
        return true;
    }

    /// The interval that was closed last.
    struct Last {
        Moment from;
        double used;
        bool empty;
        bool added;
    };

    domain::Hatch const& hatch_;
    std::size_t flock_;
    Trait what_;
    Foretold table_;
    std::optional<Moment> counted_;
    std::optional<Moment> full_;
    double used_ = 0;  // since then
    std::optional<Moment> empty_;
    std::optional<Last> last_;
    std::vector<Measured> measured_;
};

/// The last count that found heads more than `far_off` from those reckoned with till then.
std::optional<Moment> surprising_count(domain::Hatch hatch, Kind const& kind) {
    constexpr double far_off = 0.1;  // chosen here, no source
    auto const records = hatch.heads;
    std::optional<Moment> last;
    hatch.heads.clear();
    for (domain::HeadRecord const& record : records) {
        double const found = in_birds(record.birds), reckoned = in_birds(Flock(hatch, kind).alive(record.at));
        bool const count = record.what == domain::HeadRecord::What::counted;
        if (count && std::abs(found - reckoned) > far_off * reckoned) last = hatch.date + record.at;
        hatch.heads.push_back(record);
    }
    return last;
}

}  // namespace

std::vector<Measured> intervals(domain::Farm const& farm, Rations const& rations, domain::Diary const& diary) {
    std::vector<Measured> measured;
    for (std::size_t flock = 0; flock < farm.hatches.size(); ++flock) {
        domain::Hatch const& hatch = farm.hatches[flock];
        auto const about = [&](Entry const& entry) { return entry.hatch == hatch.name; };
        if (std::none_of(diary.begin(), diary.end(), about)) continue;
        for (Trait const what : {Trait::feed, Trait::water}) {
            Kind const& kind = rations.kinds.at(hatch.kind);
            Tally tally(hatch, flock, what, foretold_of(farm, hatch, kind, what), surprising_count(hatch, kind));
            for (Entry const& entry : diary) {
                if (entry.hatch == hatch.name) tally.see(entry);
            }
            auto const some = std::move(tally).measured();
            measured.insert(measured.end(), some.begin(), some.end());
        }
    }
    std::stable_sort(measured.begin(), measured.end(),
                     [](Measured const& a, Measured const& b) { return a.interval.to < b.interval.to; });
    return measured;
}

}  // namespace cropful::engine
