#include "cropful/engine/placement.hpp"
#include "cropful/quantities/whole.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "engine/flock.hpp"
#include "engine/refills.hpp"
#include "engine/roster.hpp"
#include "engine/rounding.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Brooder;

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
    Crowd(domain::Hatch const& hatch, Brooder const& sort, Rations const& rations)
        : sort_(sort),
          flock_(hatch, rations.kinds.at(hatch.kind)),
          from_(hatch.first_age),
          to_(std::min(sort.until, hatch.until)),
          ages_(crowded_ages(flock_, sort, from_, to_)) {}
    [[nodiscard]] Duration stay() const { return to_ - from_; }
    [[nodiscard]] Heads at_first() const { return flock_.alive(from_); }
    [[nodiscard]] int needs() const {
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
            std::min(all / static_cast<double>(numbers.size()), held_at(sort, booking.hatch->first_age));
        placement.stays.push_back({sort.key, number, booking.hatch->name, booking.from, to, to + rest(sort), share,
                                   booking.from + -sort.rest.value_or(days(1))});
    }
}

void place_sort(Placement& placement, Brooder const& sort, domain::Farm const& farm, Rations const& rations,
                Fits fits) {
    std::vector<Booking> bookings;
    std::vector<Crowd> crowds;
    for (domain::Hatch const& hatch : farm.hatches) {
        if (hatch.brooder != sort.key || hatch.first_age >= std::min(sort.until, hatch.until)) continue;
        Crowd const& crowd = crowds.emplace_back(hatch, sort, rations);
        bookings.push_back({&hatch, hatch.date + hatch.first_age, crowd.stay(), crowd.needs()});
    }
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

Placement place(domain::Farm const& farm, Rations const& rations, Fits fits) {
    Placement placement;
    for (auto const& [key, sort] : farm.brooders) {
        place_sort(placement, sort, farm, rations, fits);
        if (placement.stays.size() > most_stays) {
            throw NoAnswer(key + ": brooders would be taken more than " + number(most_stays, 0) +
                           " times; check how many birds one holds");
        }
    }
    for (domain::Hatch const& hatch : farm.hatches) {
        if (!hatch.brooder) placement.unnamed.push_back(hatch.name);
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
