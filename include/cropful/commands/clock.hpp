#pragma once

#include <chrono>

#include "cropful/domain/moment.hpp"

namespace cropful::commands {

/// The wall-clock minute it is here, or the moment of CROPFUL_NOW in the environment: the only place where the program
/// looks at a clock. Throws BadInput for what is no moment there.
domain::Moment now();
/// What that clock is ahead of UTC.
std::chrono::minutes now_utc_offset();
/// The minute it is in Greenwich (UTC).
domain::Moment now_utc();

}  // namespace cropful::commands
