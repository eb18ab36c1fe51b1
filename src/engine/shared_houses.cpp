#include "engine/shared_houses.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <optional>

#include "engine/instant.hpp"
#include "engine/rounding.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// The birds of one booking in one of its houses.
struct Tenant {
    Booking const* booking;
    Crowd const* crowd;
    [[nodiscard]] Moment end() const { return booking->from + booking->stay; }
    [[nodiscard]] Moment at(Duration age) const { return booking->hatch->date + age; }
    /// The share of the house that they fill; one, where a farm crowds them.
    [[nodiscard]] double fills(Moment at) const {
        return std::min(1.0, crowd->filled(at - booking->hatch->date) / booking->needs);
    }
};

class SharedHouse {
  public:
    /// Whether a tenant that comes after all others finds room. Forgets those that have left by then.
    bool takes(Tenant const& one, Duration rest) {
        leave(one.booking->from, rest);
        bool const rests = tenants_.empty() && free_from_ && *free_from_ > one.booking->from + instant;
        if (full_ || rests) return false;
        return peak(one) <= 1 + rounding;
    }
    void add(Tenant const& one) {
        for (auto& [at, fill] : fill_) {
            if (at + instant < one.end()) fill += one.fills(at);
        }
        tenants_.push_back(one);
        for (Duration const& age : one.crowd->ages()) fill_[one.at(age)] = filled(one.at(age));
    }
    /// Times before one at which more may be taken than before.
    [[nodiscard]] std::vector<Moment> fuller(Moment end) const {
        std::vector<Moment> times;
        for (auto const& [at, fill] : fill_) {
            if (at + instant < end) times.push_back(at);
        }
        return times;
    }
    /// Nobody joins as long as anybody lives there.
    void close() { full_ = true; }
    /// The share of it that is taken at a time, of tenants that have come.
    [[nodiscard]] double filled(Moment at) const {
        double sum = 0;
        for (Tenant const& one : tenants_) {
            if (at + instant < one.end()) sum += one.fills(at);
        }
        return sum;
    }

  private:
    void leave(Moment now, Duration rest) {
        std::erase_if(tenants_, [&](Tenant const& one) {
            bool const left = one.end() <= now + instant;
            if (left) free_from_ = std::max(free_from_.value_or(one.end()), one.end() + rest);
            return left;
        });
        if (tenants_.empty()) full_ = false;
        std::erase_if(fill_, [&](auto const& item) { return item.first < now; });
    }
    /// The most that is taken while one lives there too.
    [[nodiscard]] double peak(Tenant const& one) const {
        double most = 0;
        for (Duration const& age : one.crowd->ages())
            most = std::max(most, filled(one.at(age)) + one.fills(one.at(age)));
        for (auto const& [at, fill] : fill_) {
            if (at + instant < one.end()) most = std::max(most, fill + one.fills(at));
        }
        return most;
    }
    std::vector<Tenant> tenants_;
    std::map<Moment, double> fill_;  // share taken at each time at which it can be more than before
    std::optional<Moment> free_from_{};
    bool full_ = false;
};

/// Birds for which the room left in each house is too little on the worst day, and how many live in each on the first:
/// as its room is to that of all.
void fill_room(Lodged& got, Tenant const& one, std::vector<SharedHouse> const& houses) {
    Crowd const& crowd = *one.crowd;
    auto const house = [&](int number) -> SharedHouse const& { return houses[static_cast<std::size_t>(number) - 1]; };
    std::vector<Moment> times;
    for (Duration const& age : crowd.ages()) times.push_back(one.at(age));
    for (int const number : got.numbers) {
        auto const more = house(number).fuller(one.end());
        times.insert(times.end(), more.begin(), more.end());
    }
    std::vector<double> room;  // in each house on the first day
    for (int const number : got.numbers) room.push_back(1 - house(number).filled(one.booking->from));
    for (Moment const& at : times) {
        Duration const age = at - one.booking->hatch->date;
        double left = 0;
        for (int const number : got.numbers) left += 1 - house(number).filled(at);
        got.left_over = std::max(got.left_over, crowd.alive(age) - crowd.held(age) * left);
    }
    double const all = std::accumulate(room.begin(), room.end(), 0.0);
    Heads const lodged = std::min(crowd.at_first(), crowd.held(crowd.ages().front()) * all);
    for (double const left : room) got.birds.push_back(all > 0 ? lodged * (left / all) : birds(0));
}

}  // namespace

std::vector<Lodged> share_houses(std::vector<Booking> const& bookings, std::vector<Crowd> const& crowds,
                                 domain::Brooder const& sort) {
    std::vector<SharedHouse> houses(static_cast<std::size_t>(sort.count));
    std::vector<Lodged> all;
    for (std::size_t i = 0; i < bookings.size(); ++i) {
        Crowd const& crowd = crowds[i];
        Tenant const tenant{&bookings[i], &crowd};
        int const needs = bookings[i].needs;
        Lodged got{{}, {}, quantities::birds(0)};
        for (int number = 1; number <= sort.count && std::ssize(got.numbers) < needs; ++number) {
            SharedHouse& house = houses[static_cast<std::size_t>(number) - 1];
            if (house.takes(tenant, sort.rest.value_or(days(0)))) got.numbers.push_back(number);
        }
        bool const too_few = std::ssize(got.numbers) < needs;
        if (too_few) {
            fill_room(got, tenant, houses);
        } else {
            Heads const share = crowd.at_first() / static_cast<double>(std::max(needs, 1));
            got.birds.assign(got.numbers.size(), std::min(share, crowd.held(crowd.ages().front())));
        }
        for (int const number : got.numbers) {
            SharedHouse& house = houses[static_cast<std::size_t>(number) - 1];
            house.add(tenant);
            if (too_few) house.close();
        }
        all.push_back(std::move(got));
    }
    return all;
}

}  // namespace cropful::engine
