#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cropful/domain/moment.hpp"

/// iCalendar text as RFC 5545 has it: lines end with CRLF and are folded at 75 octets, never within a character.
namespace cropful::reports {

/// Something to do at a wall-clock moment.
struct Event {
    std::string uid{};
    domain::Moment at;
    std::string summary;
    std::string description;
    std::vector<std::string> categories{};
    std::vector<std::string> tasks{};  // ids of what is done
    std::optional<domain::Moment> rings{};
    bool cancelled = false;
};

/// A content line: `value` as it stands, folded.
std::string ical_line(std::string_view name, std::string_view value);
/// A TEXT value: backslash, semicolon, comma and line ends escaped; other control characters, which TEXT cannot hold,
/// shown as '?'.
std::string ical_text(std::string_view text);
/// 16 hexadecimal digits of the parts, by the 64-bit FNV-1a hash; the parts are kept apart by the octet 1F.
std::string fingerprint(std::vector<std::string> const& parts);

/// A VCALENDAR of this name. Moments are floating: the same wall-clock hour in every time zone.
/// `written` is in UTC.
std::string ical(std::string const& name, std::vector<Event> const& events, domain::Moment written);

/// Of a calendar of this name that `ical` wrote, the events between two moments whose UIDs are not among `events`, as
/// cancelled; none of another farm's.
std::vector<Event> cancelled(std::string_view before, std::string const& name, std::vector<Event> const& events,
                             domain::Moment from, domain::Moment until);

}  // namespace cropful::reports
