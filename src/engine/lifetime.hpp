#pragma once

#include "cropful/engine/lifetime.hpp"
#include "engine/banded_usage.hpp"

namespace cropful::engine {

using namespace quantities;

/// Each day of the calendar between two ages of a hatch.
std::vector<Day> days_of(domain::Hatch const& hatch, Flock const& flock, Usage<Mass> const& feed,
                         Usage<Volume> const& water, Ages ages);

Lifetime lifetime_of(domain::Hatch const& hatch, Flock const& flock, Usage<Mass> const& feed);

}  // namespace cropful::engine
