#include <array>
#include <cmath>

#include "cropful/engine/mix.hpp"
#include "cropful/quantities/make.hpp"
#include "engine/rounding.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double within = 0.01;           // of the rate
constexpr double least_scale_steps = 50;  // so that a step is no more than 2 % of what is weighed
constexpr double most_needs = 10;         // a batch is no more than so many times the need, or so many gallons

/// What a spoon or a syringe tells apart.
Volume spoon_step(Measures measures) {
    double const teaspoon = litres_per_gallon / 768;
    return litres(measures == Measures::us ? teaspoon / 8 : 0.0005);
}

}  // namespace

bool can_be_measured(Dose const& dose, domain::Farm const& farm) {
    Measures const measures = farm.measures;
    Mass const scale_step = farm.scale_step;
    if (dose.by_volume) {
        double const steps = ratio(*dose.by_volume / spoon_step(measures));
        double const whole = std::round(steps);
        if (whole >= 1 && std::abs(whole - steps) <= within * steps + rounding) return true;
    }
    return dose.by_weight && *dose.by_weight + scale_step * rounding >= scale_step * least_scale_steps;
}

Volume batch_water(domain::Supplement const& supplement, Volume need, domain::Farm const& farm) {
    if (supplement.stock) return need;
    bool const us = farm.measures == Measures::us;
    double const unit = us ? litres_per_gallon : 1;
    std::array<double, 3> const parts = us ? std::array{0.125, 0.25, 0.5} : std::array{0.5, 1.0, 2.0};
    auto const serves = [&](Volume water) {
        return water + litres(rounding) >= need && can_be_measured(dose(supplement, water), farm);
    };
    for (double const part : parts) {
        if (serves(litres(part * unit))) return litres(part * unit);
    }
    double const least = std::max(1.0, std::ceil(in_litres(need) / unit - rounding));
    double const most = std::max(most_needs, most_needs * least);
    for (double units = least; units <= most; ++units) {
        if (serves(litres(units * unit))) return litres(units * unit);
    }
    return litres(least * unit);
}

}  // namespace cropful::engine
