#include "engine/roster.hpp"

#include <algorithm>

#include "engine/instant.hpp"

namespace cropful::engine {

using namespace quantities;

Roster::Roster(std::vector<Booking> const& bookings, int count, Duration rest)
    : bookings_(bookings), count_(count), rest_(rest), longest_(rest) {
    for (std::size_t i = 0; i < bookings_.size(); ++i) {
        left_.push_back(count_ - taken(i, bookings_[i].from));
        gets_.push_back(std::min(bookings_[i].needs, left_.back()));
        longest_ = std::max(longest_, bookings_[i].stay + rest_);
    }
}

/// Where a booking stands that comes after all of its time.
std::size_t Roster::first_after(Moment when) const {
    auto const later = std::upper_bound(bookings_.begin(), bookings_.end(), when,
                                        [](Moment at, Booking const& booking) { return at < booking.from; });
    return static_cast<std::size_t>(later - bookings_.begin());
}

/// How many are taken at a time by the bookings before one.
int Roster::taken(std::size_t before, Moment when) const {
    int sum = 0;
    for (std::size_t i = before; i-- > 0;) {
        if (when - bookings_[i].from > longest_) break;
        if (bookings_[i].free_from(rest_) > when + instant) sum += gets_[i];
    }
    return sum;
}

/// What the changes that are not over yet come to; drops those that are.
int Roster::still(std::vector<Change>& changes, Moment when) {
    std::erase_if(changes, [&](Change const& change) { return change.until <= when + instant; });
    int sum = 0;
    for (Change const& change : changes) sum += change.more;
    return sum;
}

bool Roster::fits(std::size_t moved, Moment when) const {
    Booking booking = bookings_[moved];
    booking.from = when;
    std::size_t const place = first_after(when), end = bookings_.size();
    std::vector<Change> changes;
    for (std::size_t i = std::min(place, moved); i <= end; ++i) {
        if (i == place) {
            if (count_ - taken(place, when) - still(changes, when) < booking.needs) return false;
            changes.push_back({booking.free_from(rest_), booking.needs});
        }
        if (i == end) break;
        if (i == moved) {
            changes.push_back({bookings_[i].free_from(rest_), -gets_[i]});
            continue;
        }
        int const more = still(changes, bookings_[i].from);
        int const gets = std::min(bookings_[i].needs, left_[i] - more);
        if (gets < gets_[i]) return false;
        if (gets > gets_[i]) changes.push_back({bookings_[i].free_from(rest_), gets - gets_[i]});
        if (!changes.empty()) continue;
        if (i >= place && i >= moved) break;  // all that follow find what they find now
        i = (i < place ? place : moved) - 1;
    }
    return true;
}

}  // namespace cropful::engine
