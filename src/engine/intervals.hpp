#pragma once

#include <vector>

#include "cropful/engine/learn.hpp"
#include "engine/flock.hpp"
#include "engine/intake.hpp"

namespace cropful::engine {

/// An interval and what it says of the flock's scores.
struct Measured {
    Interval interval;  // not yet judged
    double off_table;   // ln(used / table)
    Belief::Sight sight;
};

/// Every stretch between two times a hatch's hoppers or drinkers were full, in order of when it ended. Used is all that
/// was put in since, less what was thrown out. The farm has the diary's head records.
std::vector<Measured> intervals(domain::Farm const& farm, Rations const& rations, domain::Diary const& diary);

}  // namespace cropful::engine
