#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "cropful/engine/agenda.hpp"

/// The agenda as events for a calendar: one for each chore at which there is anything to do.
namespace cropful::reports {

/// As iCalendar (RFC 5545). `written` is in UTC. What is not done every day rings so long before its chore, at a chore
/// itself; without an alarm nothing does. `before` is the calendar as it was written last, or empty: of its events from
/// now on those that are no more are cancelled.
std::string calendar(engine::Agenda const& agenda, engine::Moment written, std::optional<quantities::Duration> alarm,
                     std::string_view before = {});
std::string calendar_json(engine::Agenda const& agenda);

}  // namespace cropful::reports
