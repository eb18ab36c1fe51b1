#pragma once

#include "cropful/quantities/make.hpp"

namespace cropful::engine {

/// Ages nearer than this are one moment: what arithmetic may take from or add to a sum of days.
inline constexpr quantities::Duration instant = quantities::days(1e-9);

}  // namespace cropful::engine
