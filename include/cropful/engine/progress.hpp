#pragma once

#include <cstddef>
#include <functional>

namespace cropful::engine {

/// Told while a farm is worked out how many of how many steps are done, from 1 on; the last says that all are. Empty
/// where nobody asks.
using Progress = std::function<void(std::size_t done, std::size_t of)>;

}  // namespace cropful::engine
