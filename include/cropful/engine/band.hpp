#pragma once

namespace cropful::engine {

/// What a figure is in the lowest 5 %, the middle and all but the highest 5 % of possible worlds.
template <class Value>
struct Band {
    Value p05{};
    Value p50{};
    Value p95{};
};

}  // namespace cropful::engine
