#include "cropful/engine/placement.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "cropful/engine/season.hpp"
#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/hatch_model.hpp"
#include "engine/instant.hpp"
#include "engine/roster.hpp"
#include "engine/rounding.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Brooder;

constexpr Duration made_ready = days(2);    // before birds come to a stage of housing; common practice, no source
constexpr int longest_search = 366;         // days a hatch is moved at most
constexpr std::size_t most_stays = 50'000;  // more is a slip, and no page anybody reads

Heads held_at(Brooder const& sort, Duration age) {
    Heads birds = sort.holds.front().birds;
    for (domain::Room const& room : sort.holds) {
        if (room.from <= age) birds = room.birds;
    }
    return birds;
}

/// The ages of a stay at which it can be more crowded than before: where curves bend or heads jump, and where
/// brooders hold another number.
std::vector<Duration> crowded_ages(Flock const& flock, Brooder const& sort, Duration from, Duration to) {
    std::vector<Duration> ages{from};
    auto const add = [&](Duration age) {
        if (age > from && age < to) ages.push_back(age);
    };
    for (double const age : flock.breaks()) add(days(age));
    for (domain::Room const& room : sort.holds) add(room.from);
    return ages;
}

/// One hatch and its sort of brooder.
class Crowd {
  public:
    Crowd(HatchModel const& model, Brooder const& sort, domain::Residence const& time)
        : sort_(sort),
          flock_(model.flock()),
          from_(time.from),
          to_(time.to),
          ages_(crowded_ages(flock_, sort, from_, to_)) {
        if (model.hatch().housing.empty()) return;
        Lodging const* lodging = lodging_at(model.lodgings(), from_);
        if (lodging != nullptr) reserved_ = lodging->houses;
    }
    [[nodiscard]] Duration stay() const { return to_ - from_; }
    [[nodiscard]] Heads at_first() const { return flock_.alive(from_); }
    [[nodiscard]] int needs() const {
        if (reserved_) return *reserved_;
        double most = 0;
        for (Duration const& age : ages_) most = std::max(most, ratio(flock_.alive(age) / held_at(sort_, age)));
        return whole_number(std::ceil(most - rounding));
    }
    /// Birds that so many brooders do not hold on the worst day.
    [[nodiscard]] Heads left_over(int brooders) const {
        Heads most = birds(0);
        for (Duration const& age : ages_) {
            most = std::max(most, flock_.alive(age) - held_at(sort_, age) * static_cast<double>(brooders));
        }
        return most;
    }

  private:
    Brooder const& sort_;
    Flock flock_;
    Duration from_;
    Duration to_;
    std::vector<Duration> ages_;
    std::optional<int> reserved_{};  // houses that hold its birds for certain
};

Duration rest(Brooder const& sort) { return sort.rest.value_or(days(0)); }

/// The numbers, from 1, that each booking gets; bookings in order of date.
std::vector<std::vector<int>> assign(std::vector<Booking> const& bookings, Brooder const& sort) {
    std::vector<std::optional<Moment>> free_from(static_cast<std::size_t>(sort.count));
    std::vector<std::vector<int>> all;
    for (Booking const& booking : bookings) {
        std::vector<int> numbers;
        for (std::size_t i = 0; i < free_from.size() && static_cast<int>(numbers.size()) < booking.needs; ++i) {
            if (free_from[i] && *free_from[i] > booking.from + instant) continue;
            numbers.push_back(static_cast<int>(i) + 1);
            free_from[i] = booking.free_from(rest(sort));
        }
        all.push_back(std::move(numbers));
    }
    return all;
}

/// The nearest date of hatch on which it fits, in steps of this many days.
std::optional<Moment> nearest_fit(Roster const& roster, std::vector<Booking> const& bookings, std::size_t moved,
                                  double step, Brooder const& sort) {
    Booking const& booking = bookings[moved];
    if (booking.needs > sort.count) return std::nullopt;
    for (int i = 1; i <= longest_search; ++i) {
        Duration const by = days(step * i);
        if (roster.fits(moved, booking.from + by)) return booking.hatch->date + by;
    }
    return std::nullopt;
}

void add_stays(Placement& placement, Brooder const& sort, Booking const& booking, Heads all,
               std::vector<int> const& numbers) {
    Moment const to = booking.from + booking.stay;
    for (int const number : numbers) {
        Heads const share =
            std::min(all / static_cast<double>(numbers.size()), held_at(sort, booking.from - booking.hatch->date));
        bool const staged = !booking.hatch->housing.empty();
        bool const hatching = booking.from <= booking.hatch->date + instant;
        Duration const early = hatching ? booking.hatch->earliest : days(0);
        Duration const ahead = (staged ? made_ready : sort.rest.value_or(days(1))) + early;
        placement.stays.push_back(
            {sort.key, number, booking.hatch->name, booking.from, to, to + rest(sort), share, booking.from + -ahead});
    }
}

/// Everything asked of one sort, in order of date, and the flock that asks it.
std::pair<std::vector<Booking>, std::vector<Crowd>> bookings_of(Season const& season, Brooder const& sort) {
    struct Asked {
        std::size_t hatch;
        domain::Residence time;
    };
    std::vector<Asked> asked;
    auto const& hatches = season.farm().hatches;
    for (std::size_t i = 0; i < hatches.size(); ++i) {
        for (auto const& time : domain::residences_of(hatches[i], season.farm())) {
            if (time.house == sort.key) asked.push_back({i, time});
        }
    }
    std::ranges::stable_sort(asked, {}, [&](Asked const& one) { return hatches[one.hatch].date + one.time.from; });
    std::vector<Booking> bookings;
    std::vector<Crowd> crowds;
    for (Asked const& one : asked) {
        domain::Hatch const& hatch = hatches[one.hatch];
        Crowd const& crowd = crowds.emplace_back(season.hatch(one.hatch), sort, one.time);
        bookings.push_back({&hatch, hatch.date + one.time.from, crowd.stay(), crowd.needs()});
    }
    return {std::move(bookings), std::move(crowds)};
}

void place_sort(Placement& placement, Brooder const& sort, Season const& season, Fits fits) {
    auto const [bookings, crowds] = bookings_of(season, sort);
    auto const numbers = assign(bookings, sort);
    Roster const roster(bookings, sort.count, rest(sort));
    for (std::size_t i = 0; i < bookings.size(); ++i) {
        Booking const& booking = bookings[i];
        Heads const all = crowds[i].at_first();
        int const gets = static_cast<int>(numbers[i].size());
        add_stays(placement, sort, booking, all, numbers[i]);
        if (gets == booking.needs) continue;
        auto const nearest = [&](double step) {
            return fits == Fits::sought ? nearest_fit(roster, bookings, i, step, sort) : std::nullopt;
        };
        placement.unplaced.push_back({booking.hatch->name, sort.key, crowds[i].left_over(gets), all, booking.needs,
                                      gets, booking.from, booking.from + booking.stay, nearest(-1), nearest(+1)});
    }
}

}  // namespace

Placement place(Season const& season, Fits fits) {
    domain::Farm const& farm = season.farm();
    Placement placement;
    for (auto const& [key, sort] : farm.brooders) {
        place_sort(placement, sort, season, fits);
        if (placement.stays.size() > most_stays) {
            throw NoAnswer(key + ": brooders would be taken more than " + number(most_stays, 0) +
                           " times; check how many birds one holds");
        }
    }
    for (domain::Hatch const& hatch : farm.hatches) {
        if (domain::residences_of(hatch, farm).empty()) placement.unnamed.push_back(hatch.name);
    }
    auto const by_date = [](auto const& a, auto const& b) { return a.from < b.from; };
    std::stable_sort(placement.stays.begin(), placement.stays.end(), by_date);
    std::map<std::pair<std::string, int>, Moment> out;  // of each brooder, its last birds
    for (Stay& stay : placement.stays) {
        auto const [last, is_first] = out.try_emplace({stay.brooder, stay.number}, stay.to);
        if (!is_first) stay.ready_by = std::max(stay.ready_by, last->second);
        last->second = stay.to;
    }
    std::stable_sort(placement.unplaced.begin(), placement.unplaced.end(), by_date);
    return placement;
}

}  // namespace cropful::engine
