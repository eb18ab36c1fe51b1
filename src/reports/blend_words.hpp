#pragma once

#include <string>

#include "cropful/engine/blend.hpp"
#include "reports/nutrient_words.hpp"

namespace cropful::reports {

/// The level of a limit, whose level may be a share of the mix.
std::string limit_level(engine::BlendLimit const& limit, double level);
/// "at least 26 % protein", "at most 10 % Fish meal in the mix".
std::string limit_words(engine::BlendLimit const& limit, engine::BlendAnswer const& answer);
/// "one more point of protein (27 % instead of 26 %)", "allowing 1.65 % calcium instead of 1.5 %".
std::string limit_step(engine::ShadowPrice const& price, engine::BlendAnswer const& answer);

}  // namespace cropful::reports
