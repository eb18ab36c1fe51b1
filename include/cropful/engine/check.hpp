#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/rations.hpp"

namespace cropful::engine {

enum class Verdict { meets, short_of, over, unstated };

/// One nutrient of one feed against the needs of one phase.
struct Check {
    std::string feed;
    std::string phase;
    Duration from;  // ages during which both hold
    Duration to;
    std::string nutrient;
    double printed = 0;           // the table's figure, in the nutrient's unit
    double need = 0;              // as printed or scaled to the feed's energy; 0: no need is known
    std::optional<double> label;  // the guaranteed minimum
    std::optional<double> label_maximum;
    double short_by = 0;  // need - label where positive
    Verdict verdict = Verdict::unstated;
    // Protein only, a bird's day in the middle of the ages: the feed it eats, and what of that it is given and needs.
    std::optional<Mass> eaten_per_bird;
    std::optional<Mass> given_per_bird;
    std::optional<Mass> need_per_bird;
    // Sodium only: what is drunk for the feed eaten, and with it the most sodium of the diet in percent of the feed.
    std::optional<VolumePerMass> thirst;
    std::optional<MassPerVolume> drunk_sodium;
    std::optional<double> diet;
    std::optional<SodiumCeiling> ceiling;
    Source source;  // of the need
};

enum class NeedScale { as_printed, by_energy };

/// Judges a feed fed from one age to another. `by_energy` multiplies each need by ME_feed / ME_table.
std::vector<Check> check(domain::Feed const& feed, NeedsTable const& needs, Duration from, Duration to,
                         std::optional<Duration> laying_from, NeedScale scale = NeedScale::as_printed);

}  // namespace cropful::engine
