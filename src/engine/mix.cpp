#include "cropful/engine/mix.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

std::optional<MassPerVolume> weight_of_rate(Rate const& rate, domain::Supplement const& supplement) {
    if (auto const by_weight = rate.by_weight()) return by_weight;
    if (!supplement.spoon) return std::nullopt;
    return *supplement.spoon * *rate.by_measure();
}

}  // namespace

std::optional<MassPerVolume> label_strength(domain::Supplement const& supplement) {
    if (!supplement.rate) return std::nullopt;
    return weight_of_rate(*supplement.rate, supplement);
}

std::optional<MassPerVolume> strength(domain::Supplement const& supplement) {
    return weight_of_rate(domain::drunk_rate(supplement), supplement);
}

std::optional<MassPerVolume> sodium(domain::Supplement const& supplement) {
    auto const product = strength(supplement);
    if (!product || !supplement.sodium) return std::nullopt;
    return *product * *supplement.sodium;
}

Dose product_in_stock(domain::Supplement const& supplement, Volume stock) {
    return dose(supplement, stock * (1 / supplement.stock->proportioner.share()));
}

Dose dose(domain::Supplement const& supplement, Volume water) {
    Dose dose{.water = water, .by_weight = {}, .by_volume = {}, .stock = {}};
    if (auto const product = strength(supplement)) {
        dose.by_weight = *product * water;
        if (supplement.spoon) dose.by_volume = *dose.by_weight / *supplement.spoon;
    }
    if (auto const by_measure = domain::drunk_rate(supplement).by_measure()) dose.by_volume = water * *by_measure;
    if (supplement.stock) dose.stock = water * supplement.stock->proportioner.share();
    return dose;
}

}  // namespace cropful::engine
