#pragma once

#include <string>

namespace cropful::reports {

/// "methionine + cystine"; the key itself of a nutrient that is not known.
std::string nutrient_title(std::string const& nutrient);
/// "26 %", "1500 mg/kg".
std::string level_words(std::string const& nutrient, double level);

}  // namespace cropful::reports
