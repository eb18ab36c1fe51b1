#pragma once

#include <map>
#include <string>
#include <utility>

#include "cropful/blends/blend.hpp"

/// Mixes for tests.
namespace cropful::sample {

/// At so much a kg, with levels said by the grower.
inline domain::Ingredient ingredient(std::string const& key, double price, std::map<std::string, double> const& holds) {
    domain::Ingredient one;
    one.key = one.title = key;
    one.price = quantities::money_per_kilogram(price);
    for (auto const& [nutrient, level] : holds) one.holds[nutrient] = {level, level, domain::Standing::yours};
    return one;
}

/// 100 kg that keep to `need`, weighed to the kg.
inline domain::Blend wish(std::map<std::string, domain::Bounds> need) {
    domain::Blend blend;
    blend.name = "test";
    blend.batch = quantities::kilograms(100);
    blend.scale = quantities::kilograms(1);
    blend.need = std::move(need);
    return blend;
}

/// The same, weighed to the gram.
inline domain::Blend fine_wish(std::map<std::string, domain::Bounds> need) {
    domain::Blend blend = wish(std::move(need));
    blend.scale = quantities::kilograms(0.001);
    return blend;
}

}  // namespace cropful::sample
