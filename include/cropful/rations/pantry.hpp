#pragma once

#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/rations/kind.hpp"

namespace cropful::rations {

/// Everything a farm may mix: its ingredients, its feeds and what is built in. A name of the farm's own comes before
/// the same name built in. A bag of feed is priced by its bag; of what its label states only the minimum is sure.
std::vector<domain::Ingredient> pantry(domain::Farm const& farm, std::vector<domain::Ingredient> const& built_in);

/// Those a blend uses, in its order: the names of its amounts, else of its `use`, else all of the farm's ingredients.
std::vector<domain::Ingredient> chosen(domain::Farm const& farm, domain::Blend const& blend,
                                       std::vector<domain::Ingredient> const& pantry);

/// The phase a blend names, or the one for its age or for layers. Throws BadInput, naming those there are.
Phase const& phase_for(NeedsTable const& needs, domain::Blend const& blend);

}  // namespace cropful::rations
