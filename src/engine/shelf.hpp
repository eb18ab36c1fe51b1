#pragma once

#include <limits>
#include <vector>

#include "cropful/engine/trips.hpp"

namespace cropful::engine {

/// Feed bought at one time; kg. It is thrown away in the morning after its last day.
struct Lot {
    int last;
    double weight;
};
/// What is in the store of one feed, the oldest first.
using Shelf = std::vector<Lot>;
double weight(Shelf const& shelf);

inline constexpr int for_ever = std::numeric_limits<int>::max() / 2;

/// Less feed than this is not missed, in kg.
inline constexpr double not_missed = 1e-7;

/// What is eaten of one feed day by day, and what that makes of a shelf. Weights are kg.
class Eating {
  public:
    explicit Eating(FeedToBuy const& feed);
    [[nodiscard]] int horizon() const { return static_cast<int>(total_.size()) - 1; }
    /// Eaten on days `from` to `to` - 1.
    [[nodiscard]] double between(int from, int to) const { return total_[place(to)] - total_[place(from)]; }
    /// What a shelf on day `from` lacks of what is eaten before day `to`; 0 for less than is missed.
    [[nodiscard]] double missing(Shelf const& shelf, int from, int to) const;
    /// What of a shelf on day `from` will be thrown away.
    [[nodiscard]] double wasted(Shelf const& shelf, int from) const;
    /// The shelf in the morning of day `to`, what is too old thrown away, for one that lacks nothing till then. Lots
    /// that will be eaten before they are too old keep for ever, and such neighbours are one. `kept` grows by the kg
    /// in the store at each day's end.
    [[nodiscard]] Shelf eat(Shelf const& shelf, int from, int to, double& kept) const;
    /// The last day of what is bought on a day.
    [[nodiscard]] int last(int day) const { return keeps_ < for_ever ? day + keeps_ - 1 : for_ever; }

  private:
    [[nodiscard]] static std::size_t place(int day) { return static_cast<std::size_t>(day); }
    [[nodiscard]] int within(int day) const;
    int keeps_;
    std::vector<double> total_;  // eaten before each day
    std::vector<double> area_;   // the sum of total_[1] to total_[day]
};

}  // namespace cropful::engine
