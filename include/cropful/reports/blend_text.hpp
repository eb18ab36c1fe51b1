#pragma once

#include <string>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/blend.hpp"
#include "cropful/engine/square.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::reports {

/// The page of one mix: what to weigh, what it holds against the needs, what the limits cost.
std::string blend_text(engine::BlendAnswer const& answer, domain::Farm const& farm, Sources sources);
/// One line for standard error on a request no mix can keep.
std::string impossible_words(engine::BlendAnswer const& answer);

std::string square_text(engine::Square const& square, quantities::Measures measures);
std::string impossible_words(engine::Square const& square);

/// Answers in the order of the file.
std::string blends_json(std::vector<engine::BlendAnswer> const& answers, domain::Farm const& farm);
std::string square_json(engine::Square const& square);

}  // namespace cropful::reports
