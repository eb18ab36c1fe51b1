#pragma once

#include <limits>
#include <vector>

#include "engine/usage.hpp"
#include "engine/worlds.hpp"

namespace cropful::engine {

using namespace quantities;

/// A hatch's hoppers or drinkers in every world: how much of them is used, and when they are empty.
class RunOut {
  public:
    /// `use` is the flock's central use; `room` is what all the vessels hold in each world, in the same unit, less
    /// where birds use more than `factors` will say.
    RunOut(Use use, std::vector<double> room);
    /// Central use between two ages.
    [[nodiscard]] double use(Duration from, Duration to) const { return use_(from, to); }
    /// Goes on through a piece of time, the next after the last one, with each world's factor of use.
    void pass(Piece const& piece, std::vector<double> const& factors);
    /// Use over room in each world so far.
    [[nodiscard]] std::vector<double> shares() const;
    /// Age (d) at which the vessels are empty in each world; `never` where that lies beyond the last piece.
    [[nodiscard]] std::vector<double> const& empty() const { return empty_; }
    static constexpr double never = std::numeric_limits<double>::infinity();

  private:
    Use use_;
    std::vector<double> room_;
    std::vector<double> used_;
    std::vector<double> empty_;
};

}  // namespace cropful::engine
