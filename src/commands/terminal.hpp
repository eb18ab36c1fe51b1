#pragma once

#include <optional>
#include <string>

#include "cropful/reports/setting.hpp"

namespace cropful::commands {

/// How pages are laid out on standard output. On a terminal they are as wide as it, from 40 to 100 columns (COLUMNS, or
/// what the terminal says), and have bars; elsewhere they have 80 columns and none. `when` is the text of --color: with
/// auto, or without it, there is colour on a terminal unless NO_COLOR is set to anything or TERM is dumb. Throws
/// BadInput for another word.
reports::Setting setting_of_output(std::optional<std::string> const& when);

}  // namespace cropful::commands
