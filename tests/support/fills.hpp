#pragma once

#include <catch2/catch.hpp>
#include <vector>

#include "sample_farms.hpp"

/// What fills of vessels are, as lists to compare. Nobody comes but at 07:00 and 18:00.
namespace cropful::sample {

using Numbers = std::vector<double>;

/// From the morning chore to that of the evening, d.
inline constexpr double evening = 11 / 24.0;

/// The only hatch of a farm whose flocks are all alike.
inline engine::HatchPlan all_alike(domain::Farm const& farm, engine::Window window = {}) {
    return engine::make_plan(farm, without_spread(farm), window).hatches.at(0);
}

template <class Amount, class Get>
Numbers each(engine::Vessels<Amount> const& vessels, Get get) {
    Numbers numbers;
    for (auto const& fill : vessels.fills) numbers.push_back(get(fill));
    return numbers;
}

inline double plain(quantities::Mass amount) { return quantities::in_kilograms(amount); }
inline double plain(quantities::Volume amount) { return quantities::in_litres(amount); }

template <class Amount>
Numbers ages(engine::Vessels<Amount> const& vessels) {
    return each(vessels, [](auto const& fill) { return quantities::in_days(fill.age); });
}
template <class Amount>
Numbers used(engine::Vessels<Amount> const& vessels) {
    return each(vessels, [](auto const& fill) { return plain(fill.used); });
}
template <class Amount>
Numbers contents(engine::Vessels<Amount> const& vessels) {
    return each(vessels, [](auto const& fill) { return plain(fill.content); });
}
template <class Amount>
Numbers put_in(engine::Vessels<Amount> const& vessels) {
    return each(vessels, [](auto const& fill) { return plain(fill.put_in); });
}
template <class Amount>
Numbers shares(engine::Vessels<Amount> const& vessels) {
    return each(vessels, [](auto const& fill) { return fill.share_of_full; });
}
/// 1 where what was left is thrown out before.
template <class Amount>
Numbers fresh(engine::Vessels<Amount> const& vessels) {
    return each(vessels, [](auto const& fill) { return fill.fresh ? 1.0 : 0.0; });
}
template <class Amount>
Numbers would_do(engine::Vessels<Amount> const& vessels) {
    return each(vessels, [](auto const& fill) { return static_cast<double>(fill.would_do); });
}

inline Catch::Matchers::Vector::ApproxMatcher<double, std::allocator<double>, std::allocator<double>> are(
    Numbers const& expected) {
    return Catch::Approx(expected).epsilon(1e-9).margin(1e-9);
}

}  // namespace cropful::sample
