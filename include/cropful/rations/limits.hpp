#pragma once

#include <string_view>
#include <vector>

#include "cropful/rations/kind.hpp"

namespace cropful::rations {

/// The limits of a key that a level is above, or has reached where nothing more may be given from there on; by rising
/// value, whatever their order in the file. `level` is in the limits' unit: mg/L in water, the nutrient's own in feed.
std::vector<Limit const*> passed(std::vector<Limit> const& limits, std::string_view key, double level);

/// The highest of them at which birds die, so that nothing of it may be given; none for others.
Limit const* deadly(std::vector<Limit const*> const& passed);

/// "1.5 % (growing poultry): highest level growing birds tolerate"
std::string words_of(Limit const& limit);

/// Salt is 39.34 % sodium (atomic weights 22.990 and 35.453).
inline constexpr double sodium_in_salt = 0.3934;

}  // namespace cropful::rations
