#pragma once

#include <string>
#include <vector>

#include "cropful/domain/blend.hpp"

/// What the ingredients that are built in hold, each with its source.
namespace cropful::reports {

/// A figure behind ~ is less sure than the rest of its ingredient's.
std::string ingredients_text(std::vector<domain::Ingredient> const& ingredients);
std::string ingredients_json(std::vector<domain::Ingredient> const& ingredients);

}  // namespace cropful::reports
