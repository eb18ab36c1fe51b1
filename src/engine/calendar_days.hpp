#pragma once

#include <chrono>
#include <vector>

#include "cropful/domain/farm.hpp"

namespace cropful::engine {

/// The part of a hatch's life that lies on one day of the calendar.
struct CalendarDay {
    std::chrono::sys_days day;
    domain::Duration from;  // ages
    domain::Duration to;
};

/// The days from one age of a hatch to another, the first and the last as far as they lie between them: the one place
/// where days are counted. An end less than 0.1 ms past a midnight is that midnight. At least one day.
std::vector<CalendarDay> calendar_days(domain::Hatch const& hatch, domain::Duration from, domain::Duration to);

}  // namespace cropful::engine
