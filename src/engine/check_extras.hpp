#pragma once

#include "cropful/engine/check.hpp"
#include "engine/intake.hpp"

namespace cropful::engine {

using namespace quantities;

struct DailyProtein {
    Mass eaten;                 // of this feed, at its own energy
    std::optional<Mass> given;  // absent where the label states none
    Mass need;
};
/// Protein a bird is given and needs on a day of this age, by a protein check: the label's share and the needed share
/// of the feed it eats, so that one is short exactly where the other is.
DailyProtein daily_protein(Check const& check, Intake const& intake, Duration age);

/// Adds to each protein check what a bird is given and needs a day in the middle of its ages; not of birds
/// whose appetite is not known.
void add_daily_protein(std::vector<Check>& checks, Intake const& intake);

/// The most of a nutrient that a label lets expect: its maximum, or its minimum where that is more; 0 when unstated.
double most_stated(Check const& check);

/// Marks what is above the lowest limit of its nutrient in feed; calcium only while birds do not lay.
void mark_excess(std::vector<Check>& checks, std::vector<Limit> const& limits, std::optional<Duration> laying_from);

/// Adds what the label states above a limit and the phase has no need of: a check with a need of 0.
void add_excess_without_need(std::vector<Check>& checks, domain::Feed const& feed, std::vector<Limit> const& limits);

}  // namespace cropful::engine
