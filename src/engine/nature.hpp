#pragma once

#include "cropful/engine/belief.hpp"

namespace cropful::engine {

/// How far a flock lies from the central tables, in standard scores: 0 is central, 1.645 the table's high column.
struct Nature {
    double feed = 0;
    double water = 0;  // of the ratio of water to feed
};

/// The believed means of a flock's scores.
inline Nature nature(Belief const& belief, std::size_t flock) {
    return {belief.score(flock, Belief::Trait::feed).mean, belief.score(flock, Belief::Trait::water).mean};
}

}  // namespace cropful::engine
