#pragma once

#include <optional>
#include <string>

#include "cropful/domain/farm.hpp"
#include "cropful/readers/rations.hpp"

namespace cropful::readers {

/// Reads a farm file (docs/files.md). Throws BadInput with file, line and key; WrongUse when it cannot be opened.
domain::Farm read_farm(std::string const& path, RationsReader const& rations);

/// The same for a file of blends, in which hatches and [farm] may be absent. With the name of one of its blends only
/// that one is read, and the others are there by name alone.
domain::Farm read_blend_file(std::string const& path, RationsReader const& rations,
                             std::optional<std::string> const& blend = {});

/// A commented farm file that `plan` accepts as it is.
std::string starter_farm();

}  // namespace cropful::readers
