#pragma once

#include <string>

#include "cropful/blends/blend.hpp"
#include "reports/nutrient_words.hpp"

namespace cropful::reports {

/// The level of a limit, whose level may be a share of the mix.
std::string limit_level(blends::BlendLimit const& limit, double level);
/// "at least 26 % protein", "at most 10 % Fish meal in the mix".
std::string limit_words(blends::BlendLimit const& limit, blends::BlendAnswer const& answer);
/// "one more point of protein (27 % instead of 26 %)", "allowing 1.65 % calcium instead of 1.5 %".
std::string limit_step(blends::ShadowPrice const& price, blends::BlendAnswer const& answer);

}  // namespace cropful::reports
