#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/engine/plan.hpp"

/// The answers as JSON text, for programs: SI numbers with the unit in the key, one set of keys for all commands.
namespace cropful::reports {

std::string plan_json(engine::Plan const& plan, engine::Window const& window = {});
std::string buy_json(engine::Plan const& plan, engine::Window const& window = {});
/// Only the first fill of each vessel.
std::string last_json(engine::Plan const& plan, std::optional<engine::Moment> at);
std::string mix_json_text(engine::Plan const& plan);
std::string plain_mix_json(engine::Mix const& mix, std::vector<engine::Caution> const& cautions,
                           quantities::Measures measures);
std::string chlorine_json(engine::ChlorineDose const& dose, std::vector<engine::Caution> const& cautions,
                          quantities::Measures measures);
std::string check_json_text(engine::Plan const& plan);

}  // namespace cropful::reports
