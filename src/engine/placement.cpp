#include "cropful/engine/placement.hpp"

#include <algorithm>
#include <map>

#include "cropful/domain/ranges.hpp"
#include "cropful/engine/season.hpp"
#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "engine/instant.hpp"
#include "engine/roster.hpp"
#include "engine/shared_houses.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Brooder;

constexpr Duration made_ready = days(2);    // before birds come to a stage of housing; common practice, no source
constexpr int longest_search = 366;         // days a hatch is moved at most
constexpr std::size_t most_stays = 50'000;  // more is a slip, and no page anybody reads

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

void add_stays(Placement& placement, Brooder const& sort, Booking const& booking, Lodged const& got) {
    Moment const to = booking.from + booking.stay;
    bool const staged = !booking.hatch->housing.empty();
    bool const hatching = booking.from <= booking.hatch->date + instant;
    Duration const early = hatching ? booking.hatch->earliest : days(0);
    Duration const ahead = (staged ? made_ready : sort.rest.value_or(days(1))) + early;
    for (std::size_t i = 0; i < got.numbers.size(); ++i) {
        placement.stays.push_back({sort.key, got.numbers[i], booking.hatch->name, booking.from, to, to + rest(sort),
                                   got.birds[i], booking.from + -ahead});
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
    ranges::stable_sort(asked, {}, [&](Asked const& one) { return hatches[one.hatch].date + one.time.from; });
    std::vector<Booking> bookings;
    std::vector<Crowd> crowds;
    for (Asked const& one : asked) {
        domain::Hatch const& hatch = hatches[one.hatch];
        Crowd const& crowd = crowds.emplace_back(season.hatch(one.hatch), sort, one.time);
        bookings.push_back({&hatch, hatch.date + one.time.from, crowd.stay(), crowd.needs()});
    }
    return {std::move(bookings), std::move(crowds)};
}

/// Where every booking has houses of its own.
std::vector<Lodged> lodge_apart(std::vector<Booking> const& bookings, std::vector<Crowd> const& crowds,
                                Brooder const& sort) {
    std::vector<Lodged> all;
    auto const numbers = assign(bookings, sort);
    for (std::size_t i = 0; i < bookings.size(); ++i) {
        Crowd const& crowd = crowds[i];
        int const gets = static_cast<int>(numbers[i].size());
        Heads const share = crowd.at_first() / static_cast<double>(std::max(gets, 1));
        std::vector<Heads> const each(numbers[i].size(), std::min(share, crowd.held(crowd.ages().front())));
        all.push_back({numbers[i], each, crowd.left_over(gets)});
    }
    return all;
}

void place_sort(Placement& placement, Brooder const& sort, Season const& season, Fits fits) {
    auto const [bookings, crowds] = bookings_of(season, sort);
    auto const lodged = sort.shared ? share_houses(bookings, crowds, sort) : lodge_apart(bookings, crowds, sort);
    Roster const roster(bookings, sort.count, rest(sort));
    for (std::size_t i = 0; i < bookings.size(); ++i) {
        Booking const& booking = bookings[i];
        Lodged const& got = lodged[i];
        int const gets = static_cast<int>(got.numbers.size());
        add_stays(placement, sort, booking, got);
        if (gets == booking.needs) continue;
        auto const nearest = [&, &bookings = bookings](double step) {
            bool const sought = fits == Fits::sought && !sort.shared;
            return sought ? nearest_fit(roster, bookings, i, step, sort) : std::nullopt;
        };
        placement.unplaced.push_back({booking.hatch->name, sort.key, got.left_over, crowds[i].at_first(), booking.needs,
                                      gets, booking.from, booking.from + booking.stay, nearest(-1), nearest(+1)});
    }
}

/// Of each house, when it is readied and when it is free: a house that birds live in is neither. Stays in order of
/// date.
void ready_houses(std::vector<Stay>& stays) {
    std::map<std::pair<std::string, int>, std::vector<Stay*>> there;  // of each house, those not yet out
    std::map<std::pair<std::string, int>, Moment> out;                // and when its last birds are
    for (Stay& stay : stays) {
        std::pair<std::string, int> const house{stay.brooder, stay.number};
        auto& others = there[house];
        std::erase_if(others, [&](Stay const* other) { return other->to <= stay.from + instant; });
        stay.joins = !others.empty();
        for (Stay* other : others) {
            Stay* const first = other->to < stay.to ? other : &stay;
            first->free_from = first->to;
        }
        others.push_back(&stay);
        auto const [last, is_first] = out.try_emplace(house, stay.to);
        if (!is_first && !stay.joins) stay.ready_by = std::max(stay.ready_by, last->second);
        last->second = std::max(last->second, stay.to);
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
    ready_houses(placement.stays);
    std::stable_sort(placement.unplaced.begin(), placement.unplaced.end(), by_date);
    return placement;
}

}  // namespace cropful::engine
