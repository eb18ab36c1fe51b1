#pragma once

#include <optional>
#include <string>

#include "cropful/engine/plan.hpp"

/// A plan as events for a calendar: what to fill, change, stir in, buy and look at, each on its day or by its moment.
namespace cropful::reports {

/// As iCalendar (RFC 5545). `written` is in UTC; an alarm rings so long before each event, where one is wanted.
std::string calendar(engine::Plan const& plan, rations::Rations const& rations, engine::Moment written,
                     std::optional<quantities::Duration> alarm);
std::string calendar_json(engine::Plan const& plan, rations::Rations const& rations);

}  // namespace cropful::reports
