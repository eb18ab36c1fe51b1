#pragma once

#include "cropful/domain/farm.hpp"
#include "cropful/engine/progress.hpp"

namespace cropful::commands {

/// Says on a terminal's standard error how far the work of a farm with many hatches has come, on a line that is gone
/// when it is done; empty on a pipe, and for farms that take no more than a second or two.
engine::Progress progress_for(domain::Farm const& farm);

}  // namespace cropful::commands
