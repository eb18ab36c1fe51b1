#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/rations.hpp"
#include "cropful/engine/water.hpp"

namespace cropful::engine {

/// Product to stir into an amount of water.
struct Dose {
    Volume water;
    std::optional<Mass> by_weight;    // by stock, by a rate by weight, or by spoon when the spoon's weight is known
    std::optional<Volume> by_volume;  // known for a rate by measure, or by weight when the spoon's weight is known
    std::optional<Volume> stock;      // of it in the water, put in by the proportioner
};

/// One batch: mixed at `at`, drunk until the next.
struct Batch {
    domain::Moment at;
    Duration age;
    Duration lasts;
    Volume drunk;         // by the usual flock in that time, spill included
    Dose dose;            // dose.water is what is mixed: a volume that can be measured, for a dose that can
    Volume drunk_p95;     // in all but the thirstiest 5 % of worlds
    Volume each_drinker;  // poured into each; all of it where no drinker is named
    Volume thrown;        // mixed and not poured
};

struct Mix {
    std::string supplement;
    Duration from;  // ages of the course
    Duration to;
    std::string words;           // the label's rate
    std::vector<Batch> batches;  // empty for a question about plain water
    Dose total;
    std::optional<MassPerVolume> strength;  // product by weight per water
    std::optional<MassPerVolume> sodium;    // added sodium per water
    std::optional<SodiumSum> sum{};         // with what is in the water; none where nothing of it is known
};

/// Whether a dose is a multiple of 1/8 tsp (0.5 mL) within 1 % of the rate, or at least 50 steps of the farm's scale.
bool can_be_measured(Dose const& dose, domain::Farm const& farm);
/// The least volume a person can measure, no less than `need`, whose dose a person can measure: 1 pt, 1 qt, 1/2 gal or
/// whole gallons (0.5, 1, 2 or whole litres) for a multiple of 1/8 tsp (0.5 mL) within 1 % of the rate, or for at least
/// 50 steps of a scale; where that would be more than ten times the need and ten gallons (litres), the least volume.
/// Of water through a proportioner `need` itself.
Volume batch_water(domain::Supplement const& supplement, Volume need, domain::Farm const& farm);

/// What goes into `water`, stock included: strength times water. Needs a rate or a stock.
Dose dose(domain::Supplement const& supplement, Volume water);
/// What goes into so much stock of a supplement that has one; the water of the dose is what it serves.
Dose product_in_stock(domain::Supplement const& supplement, Volume stock);
/// Product by weight in the water by the label's rate; empty when only a measure is known.
std::optional<MassPerVolume> label_strength(domain::Supplement const& supplement);
/// Product by weight in the water as drunk: through the stock when there is one, else by the label.
std::optional<MassPerVolume> strength(domain::Supplement const& supplement);
/// Sodium added to the water.
std::optional<MassPerVolume> sodium(domain::Supplement const& supplement);
/// What must be said of a supplement whoever drinks it: a bare "oz", a stock that does not give the label rate, acid,
/// vitamins for longer than their label means, where it is `given` so long.
std::vector<domain::Caution> mix_cautions(domain::Supplement const& supplement, Duration given);
/// Of a rate by the weight of birds.
domain::Caution by_weight_caution(domain::Supplement const& supplement);
/// Of the sodium in what is drunk.
std::vector<domain::Caution> sodium_cautions(domain::Supplement const& supplement, SodiumSum const& sum);

}  // namespace cropful::engine
