#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/quantities.hpp"

/// What a proportioner takes, for all hatches and houses on its line.
namespace cropful::engine {

struct Plan;
class Season;
struct Window;

/// All that is begun on one calendar day, for the safe need.
struct StockDay {
    std::chrono::sys_days day;
    Volume water;  // drunk
    Volume stock;  // of it
};

/// One mixing of a stock tank; what was left is thrown out.
struct StockFill {
    domain::Moment at;
    Volume put_in;                           // what is needed until then for certain, no more than the tank holds
    domain::Moment until;                    // the last chore while it lasts and keeps, or the course's end
    std::optional<domain::Moment> empty_at;  // of a FULL tank, 19 times in 20 not sooner; absent: past the course
    std::optional<Duration> too_soon{};      // how long a full tank lasts, where that is not until the next chore
    bool too_old = false;                    // the stock does not keep until then
};

struct StockLine {
    std::string supplement;
    std::vector<std::string> hatches;  // all that drink of it, in order of the farm file
    std::vector<StockDay> days;
    std::vector<StockFill> fills;  // none without a tank
};

/// Of every supplement that goes through a proportioner for a hatch of the plan, in order of its key. A line is one for
/// the whole farm, and a tank is mixed in the rhythm that begins with its course: neither depends on which hatches and
/// from when on a window asks for.
std::vector<StockLine> stock_lines(Season const& season, Plan const& plan, Window const& window);

}  // namespace cropful::engine
