#include "engine/calendar_days.hpp"

#include <algorithm>

#include "engine/instant.hpp"

namespace cropful::engine {

std::vector<CalendarDay> calendar_days(domain::Hatch const& hatch, domain::Duration from, domain::Duration to) {
    std::chrono::sys_days const first = (hatch.date + from).calendar_day();
    // calendar_day gives what lies up to an instant before midnight to the next day; an end is to go the other way
    std::chrono::sys_days const last = std::max(first, (hatch.date + (to - 2.0 * instant)).calendar_day());
    std::vector<CalendarDay> all;
    domain::Duration start = from;
    for (auto day = first; day <= last; day += std::chrono::days(1)) {
        domain::Duration const midnight = domain::Moment(day + std::chrono::days(1)) - hatch.date;
        domain::Duration const end = day == last ? to : midnight;
        all.push_back({day, start, end});
        start = end;
    }
    return all;
}

}  // namespace cropful::engine
