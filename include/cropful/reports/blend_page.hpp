#pragma once

#include <string>

#include "cropful/blends/blend.hpp"
#include "cropful/blends/square.hpp"
#include "cropful/domain/farm.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace cropful::reports {

/// The page of one mix: what to weigh, what it holds against the needs, what the limits cost.
Page blend_page(blends::BlendAnswer const& answer, domain::Farm const& farm, Sources sources);
/// One line for standard error on a request no mix can keep.
std::string impossible_words(blends::BlendAnswer const& answer);

Page square_page(blends::Square const& square, quantities::Measures measures);
std::string impossible_words(blends::Square const& square);

/// Answers in the order of the file.
std::string blends_json(std::vector<blends::BlendAnswer> const& answers, domain::Farm const& farm);
std::string square_json(blends::Square const& square);

}  // namespace cropful::reports
