#pragma once

#include <vector>

#include "engine/sway.hpp"
#include "engine/usage.hpp"

namespace cropful::engine {

using namespace quantities;

/// A stretch of ages short enough for every world to keep one factor over it.
struct Piece {
    Duration from;
    Duration to;
};

/// The stretch between two ages, cut where the flock's spread bends or jumps and into pieces no longer than `longest`.
std::vector<Piece> pieces(Flock const& flock, Intake const& intake, Duration from, Duration to, Duration longest);

/// What the flock uses over some pieces in every world, in kg.
std::vector<double> world_totals(Usage<Mass> const& central, std::vector<Piece> const& pieces, Spread const& spread,
                                 Sway const& sway);

}  // namespace cropful::engine
