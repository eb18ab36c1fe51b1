#pragma once

#include <limits>
#include <vector>

#include "engine/shelf.hpp"

namespace cropful::engine {

inline constexpr double no_way = std::numeric_limits<double>::infinity();

/// What trips and keeping cost at the least, as if bags held any weight. Days are trips; `horizon()` is the end.
class TripBounds {
  public:
    /// Both must outlive the bounds.
    TripBounds(Buying const& buying, std::vector<Eating> const& eating);
    /// A trip on this day and all that comes after it; `no_way` where no trips feed every day from then on.
    [[nodiscard]] double from(int day) const { return from_[static_cast<std::size_t>(day)]; }
    /// Keeping between a trip and the next.
    [[nodiscard]] double keeping(int day, int next) const;
    [[nodiscard]] bool is_trip(int day) const { return buying_.trips[static_cast<std::size_t>(day)].has_value(); }
    [[nodiscard]] double trip(int day) const;
    /// The trip after a day, or the end.
    [[nodiscard]] int next(int day) const;
    /// The next trip with which `from` is least, or the end.
    [[nodiscard]] int best_next(int day) const { return best_next_[static_cast<std::size_t>(day)]; }
    /// What is there after a trip must last to before this day if the next trip is on `next`.
    [[nodiscard]] int cover(int next) const;
    [[nodiscard]] int horizon() const { return days_; }
    [[nodiscard]] std::optional<Obstacle> const& obstacle() const { return obstacle_; }

  private:
    [[nodiscard]] std::optional<Obstacle> between(int day, int next) const;
    Buying const& buying_;
    std::vector<Eating> const& eating_;
    int days_;
    std::vector<double> total_;  // all feeds, eaten before each day
    std::vector<double> area_;
    std::vector<double> from_;
    std::vector<int> best_next_;
    std::optional<Obstacle> obstacle_;
};

}  // namespace cropful::engine
