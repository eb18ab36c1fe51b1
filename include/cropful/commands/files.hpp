#pragma once

#include <optional>
#include <string>

#include "cropful/readers/farm.hpp"

namespace cropful::commands {

/// Of what is built in, with the files of a directory (--rations) in front. Throws WrongUse where that is none.
readers::RationsReader rations_reader(std::optional<std::string> const& directory);

/// Throws BadInput with file, line and key; WrongUse when the file cannot be read.
domain::Farm read_farm(std::string const& path, readers::RationsReader const& rations);

}  // namespace cropful::commands
