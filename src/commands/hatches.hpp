#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/window.hpp"

/// Hatches of a farm by their names.
namespace cropful::commands {

/// Throws BadInput, which names the nearest, where none is called so.
domain::Hatch const& hatch_called(std::string_view name, domain::Farm const& farm);

/// The names of those that --hatch asks for, each time; of a hatch that comes again, its name without a number stands
/// for all. Empty without any. Throws BadInput.
engine::HatchChoice hatches_called(std::vector<std::string> const& names, domain::Farm const& farm);

}  // namespace cropful::commands
