#pragma once

#include <vector>

#include "engine/sway.hpp"
#include "engine/usage.hpp"

namespace cropful::engine {

/// A stretch of ages short enough for every world to keep one factor over it.
struct Piece {
    Duration from;
    Duration to;
};

/// The stretch between two ages, cut where the flock's spread bends or jumps and into pieces no longer than `longest`.
std::vector<Piece> pieces(Flock const& flock, Intake const& intake, Duration from, Duration to, Duration longest);

/// Adds what the flock uses between two ages in every world, in kg, to `totals`.
void add_feed(Usage<Mass> const& central, std::vector<Piece> const& pieces, Sway const& sway,
              std::vector<double>& totals);

}  // namespace cropful::engine
