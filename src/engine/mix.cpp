#include "cropful/engine/mix.hpp"

namespace cropful::engine {

std::optional<MassPerVolume> strength(domain::Supplement const& supplement) {
    if (supplement.rate && supplement.rate->by_weight) return kilograms_per_litre(supplement.rate->per_litre);
    if (supplement.rate && supplement.spoon) return *supplement.spoon * supplement.rate->per_litre;
    if (!supplement.rate && supplement.stock) return supplement.stock->strength / supplement.stock->water_parts;
    return std::nullopt;
}

std::optional<MassPerVolume> sodium(domain::Supplement const& supplement) {
    auto const product = strength(supplement);
    if (!product || !supplement.sodium) return std::nullopt;
    return *product * *supplement.sodium;
}

Dose dose(domain::Supplement const& supplement, Volume water) {
    Dose dose{.water = water, .by_weight = {}, .by_volume = {}, .stock_product = {}, .stock = {}};
    if (auto const product = strength(supplement)) {
        dose.by_weight = *product * water;
        if (supplement.spoon) dose.by_volume = *dose.by_weight / *supplement.spoon;
    }
    if (supplement.rate && !supplement.rate->by_weight) dose.by_volume = water * supplement.rate->per_litre;
    if (supplement.stock) {
        dose.stock = water / supplement.stock->water_parts;
        dose.stock_product = *dose.stock * supplement.stock->strength;
    }
    return dose;
}

}  // namespace cropful::engine
