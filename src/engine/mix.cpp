#include "cropful/engine/mix.hpp"

namespace cropful::engine {

std::optional<MassPerVolume> label_strength(domain::Supplement const& supplement) {
    if (!supplement.rate) return std::nullopt;
    if (supplement.rate->by_weight) return kilograms_per_litre(supplement.rate->per_litre);
    if (!supplement.spoon) return std::nullopt;
    return *supplement.spoon * supplement.rate->per_litre;
}

std::optional<MassPerVolume> strength(domain::Supplement const& supplement) {
    if (supplement.stock) {
        return kilograms_per_litre(supplement.stock->strength.per_litre / supplement.stock->water_parts);
    }
    return label_strength(supplement);
}

std::optional<MassPerVolume> sodium(domain::Supplement const& supplement) {
    auto const product = strength(supplement);
    if (!product || !supplement.sodium) return std::nullopt;
    return *product * *supplement.sodium;
}

Dose dose(domain::Supplement const& supplement, Volume water) {
    Dose dose{.water = water, .by_weight = {}, .by_volume = {}, .stock = {}};
    if (auto const product = strength(supplement)) {
        dose.by_weight = *product * water;
        if (supplement.spoon) dose.by_volume = *dose.by_weight / *supplement.spoon;
    }
    if (supplement.stock) {
        dose.stock = water / supplement.stock->water_parts;
    } else if (!supplement.rate->by_weight) {
        dose.by_volume = water * supplement.rate->per_litre;
    }
    return dose;
}

}  // namespace cropful::engine
