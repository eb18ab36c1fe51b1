#pragma once

#include "cropful/engine/mix.hpp"
#include "engine/banded_usage.hpp"

namespace cropful::engine {

using namespace quantities;

/// The batches of a supplement course between two ages: each a day's drinking, or less when the solution keeps less.
/// A batch is at least what the drinkers' troughs need; the totals count what is then thrown away.
/// The safe total adds up the safe end of every batch.
Mix course(domain::Hatch const& hatch, domain::Supplement const& supplement, domain::Drinker const* drinker,
           BandedUsage<Volume> const& usage, Duration from, Duration to);

}  // namespace cropful::engine
