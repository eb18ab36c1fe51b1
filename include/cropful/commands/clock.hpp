#pragma once

#include "cropful/domain/moment.hpp"

namespace cropful::commands {

/// The wall-clock minute it is here: the only place where the program looks at a clock.
domain::Moment now();
domain::Moment today();
/// The minute it is in Greenwich (UTC).
domain::Moment now_utc();

}  // namespace cropful::commands
