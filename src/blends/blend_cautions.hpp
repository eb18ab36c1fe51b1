#pragma once

#include "cropful/blends/blend.hpp"

namespace cropful::blends {

/// What can go wrong with a mix as it stands in the answer; `used` are its ingredients, none left out.
std::vector<Caution> blend_cautions(BlendAnswer const& answer, std::vector<Ingredient> const& used,
                                    std::optional<BlendNeeds> const& needs);

}  // namespace cropful::blends
