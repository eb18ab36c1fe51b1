#pragma once

#include <string>
#include <vector>

#include "cropful/domain/blend.hpp"
#include "cropful/reports/page.hpp"

/// What the ingredients that are built in hold, each with its source.
namespace cropful::reports {

/// A figure behind ~ is less sure than the rest of its ingredient's.
Page ingredients_page(std::vector<domain::Ingredient> const& ingredients);
std::string ingredients_json(std::vector<domain::Ingredient> const& ingredients);

}  // namespace cropful::reports
