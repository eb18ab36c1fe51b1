#include "cropful/engine/mix.hpp"

namespace cropful::engine {

using namespace quantities;

std::optional<MassPerVolume> label_strength(domain::Supplement const& supplement) {
    if (!supplement.rate) return std::nullopt;
    if (auto const by_weight = supplement.rate->by_weight()) return by_weight;
    if (!supplement.spoon) return std::nullopt;
    return *supplement.spoon * *supplement.rate->by_measure();
}

std::optional<MassPerVolume> strength(domain::Supplement const& supplement) {
    if (supplement.stock) {
        return *supplement.stock->strength.by_weight() / supplement.stock->water_parts;
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
    } else if (auto const by_measure = supplement.rate->by_measure()) {
        dose.by_volume = water * *by_measure;
    }
    return dose;
}

}  // namespace cropful::engine
