#pragma once

namespace cropful::engine {

/// What sums of doubles may be off by, relative: 12.0000000001 bags are 12, and a label that equals the need meets it.
inline constexpr double rounding = 1e-9;

}  // namespace cropful::engine
