#pragma once

#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/quantities.hpp"

namespace cropful::engine {

using domain::Moment;

/// When somebody is in the barn: the same hours every day. What must not be late is done at the last chore before it,
/// what must not be early at the first after it.
class Chores {
  public:
    explicit Chores(domain::Farm const& farm) : hours_(domain::chores_of(farm)) {}
    /// The last that is no later than a moment.
    [[nodiscard]] Moment last_by(Moment at) const;
    /// The first that is no earlier.
    [[nodiscard]] Moment first_from(Moment at) const;
    /// The first that is later.
    [[nodiscard]] Moment first_after(Moment at) const;

  private:
    std::vector<Duration> hours_;  // of the day, rising
};

/// The chores of a hatch, by its age.
class ChoresByAge {
  public:
    ChoresByAge(domain::Farm const& farm, domain::Hatch const& hatch) : chores_(farm), hatched_(hatch.date) {}
    [[nodiscard]] Duration last_by(Duration age) const { return chores_.last_by(hatched_ + age) - hatched_; }
    [[nodiscard]] Duration first_after(Duration age) const { return chores_.first_after(hatched_ + age) - hatched_; }

  private:
    Chores chores_;
    Moment hatched_;
};

}  // namespace cropful::engine
