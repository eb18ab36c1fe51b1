#pragma once

#include <string>
#include <vector>

#include "cropful/engine/learn.hpp"
#include "cropful/engine/lifetime.hpp"

namespace cropful::engine {

/// A hatch that is over, and the feed it took.
struct Ended {
    std::string hatch;
    domain::Moment from;
    domain::Moment until;
    Mass put_in;              // as the diary has it, what was thrown out taken off
    Mass expected;            // by the tables alone, of the birds that were there
    bool from_start = false;  // the diary knows of feed from the first two days on
};

/// Those with feed in their diary that are over at a moment, in the farm's order.
std::vector<Ended> ended(Lessons const& lessons, Rations const& rations, domain::Diary const& diary,
                         domain::Moment now);

}  // namespace cropful::engine
