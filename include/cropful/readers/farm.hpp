#pragma once

#include <optional>
#include <string>

#include "cropful/domain/farm.hpp"
#include "cropful/readers/rations.hpp"

namespace cropful::readers {

/// Reads a farm file (docs/files.md), which faults call `name`. Throws BadInput with file, line and key.
domain::Farm parse_farm(std::string const& text, std::string const& name, RationsReader const& rations);

/// The same for a file of blends, in which hatches and [farm] may be absent. With the name of one of its blends only
/// that one is read, and the others are there by name alone.
domain::Farm parse_blend_file(std::string const& text, std::string const& name, RationsReader const& rations,
                              std::optional<std::string> const& blend = {});

/// A commented farm file that `plan` accepts as it is.
std::string starter_farm(quantities::Measures measures = quantities::Measures::us);

}  // namespace cropful::readers
