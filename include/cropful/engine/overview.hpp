#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/engine/plan.hpp"

/// All hatches of a year together: where they stand, what they use day by day, what they cost.
namespace cropful::engine {

/// What a hatch's feed costs over its whole life, at the price of the feed's bag by what it weighs, as eaten. Absent
/// where a feed has no price or there is nothing to divide by.
struct HatchCost {
    std::string hatch;
    std::string kind;
    Moment date;
    Heads chicks;
    Heads raised;
    Mass feed;
    std::optional<Money> cost;
    std::optional<Money> per_bird;   // raised
    std::optional<Money> per_dozen;  // feed eaten while laying, by the eggs laid
    std::optional<Money> week_more;
    bool lays_unstated = false;  // it lays, but how much is not stated
};

struct Overview {
    Plan plan;              // of the whole time
    Moment from;            // 00:00 of the first day with birds
    Moment to;              // the end of the last
    Placement placement;    // what is there in this time
    std::vector<Day> days;  // every one from `from` to `to`, all hatches together
    std::vector<HatchCost> costs;
    Readying readying;
    std::vector<Assumption> assumptions;
};

/// Whole days of the window. Throws NoAnswer where the data allow none.
Overview make_overview(Season const& season, Window window = {});

}  // namespace cropful::engine
