#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cropful/domain/moment.hpp"

/// iCalendar text as RFC 5545 has it: lines end with CRLF and are folded at 75 octets, never within a character.
namespace cropful::reports {

/// Something to do, at a wall-clock moment or, at midnight, on that day; once, or every few days.
struct Event {
    std::string uid;
    std::string what;  // its category: "Fill", "Water", ...
    std::string hatch;
    std::string which;  // tells it from others of its hatch and category
    domain::Moment at;
    std::string summary;
    std::string description;
    int every_days = 1;
    int times = 1;
    bool not_before = false;  // names a moment that must not be taken for an earlier one: it rings at it, never sooner
    [[nodiscard]] bool all_day() const { return at.iso().ends_with("T00:00"); }
};

/// A content line: `value` as it stands, folded.
std::string ical_line(std::string_view name, std::string_view value);
/// A TEXT value: backslash, semicolon, comma and line ends escaped; other control characters, which TEXT cannot hold,
/// shown as '?'.
std::string ical_text(std::string_view text);
/// 16 hexadecimal digits of the parts, by the 64-bit FNV-1a hash; the parts are kept apart by the octet 1F.
std::string fingerprint(std::vector<std::string> const& parts);

/// What every event carries: when the file was written, in UTC, and how long before an alarm rings.
struct Issue {
    domain::Moment written;
    std::optional<quantities::Duration> alarm;
};

/// A VCALENDAR of this name. Moments are floating: the same wall-clock hour in every time zone.
std::string ical(std::string const& name, std::vector<Event> const& events, Issue const& issue);

}  // namespace cropful::reports
