#pragma once

#include <string>
#include <vector>

#include "commands/new_file.hpp"
#include "cropful/commands/farm_options.hpp"

namespace cropful::commands {

/// A farm's file, the diary beside it, and what SQLite keeps beside that.
std::vector<Input> farm_inputs(std::string const& farm_file);
/// What a question is answered from: those of its farm, and the files of --rations.
std::vector<Input> inputs_of(FarmOptions const& question);

}  // namespace cropful::commands
