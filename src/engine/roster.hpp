#pragma once

#include <vector>

#include "cropful/engine/placement.hpp"

namespace cropful::engine {

using namespace quantities;

/// What a hatch asks of its sort of brooder.
struct Booking {
    domain::Hatch const* hatch;
    Moment from;
    Duration stay;
    int needs;
    [[nodiscard]] Moment free_from(Duration rest) const { return from + stay + rest; }
};

/// How many brooders of one sort each booking gets, those in order of date first, and what it does to all others to
/// move one of them.
class Roster {
  public:
    /// Bookings in order of date; they must outlive the roster. `count` brooders, each free again after `rest`.
    Roster(std::vector<Booking> const& bookings, int count, Duration rest);
    /// Whether the whole of a booking fits at another time, after those of the same day, and no other gets fewer than
    /// now. Looks at the bookings only for as long as they get other numbers than now.
    [[nodiscard]] bool fits(std::size_t moved, Moment when) const;

  private:
    /// Brooders that are taken until a time, beyond those of now.
    struct Change {
        Moment until;
        int more;
    };
    [[nodiscard]] std::size_t first_after(Moment when) const;
    [[nodiscard]] int taken(std::size_t before, Moment when) const;
    static int still(std::vector<Change>& changes, Moment when);
    std::vector<Booking> const& bookings_;
    int count_;
    Duration rest_;
    Duration longest_;       // that a booking keeps its brooders
    std::vector<int> left_;  // of each booking, what it finds
    std::vector<int> gets_;
};

}  // namespace cropful::engine
