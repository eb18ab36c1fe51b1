#include "reports/ical.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <set>

#include "cropful/domain/ranges.hpp"
#include "cropful/fault.hpp"
#include "cropful/quantities/whole.hpp"

namespace cropful::reports {

namespace {

using domain::Moment;

constexpr std::size_t most_octets = 75;  // of a line, without its CRLF: RFC 5545, 3.1

constexpr std::size_t longest_character = 4;  // octets of UTF-8

bool within_character(char octet) { return (static_cast<unsigned char>(octet) & 0xC0U) == 0x80U; }

std::string without(std::string text, std::string_view characters) {
    std::erase_if(text, [&](char c) { return characters.find(c) != std::string_view::npos; });
    return text;
}

std::string second(Moment at) { return without(at.iso(), "-:") + "00"; }

/// Minutes since the year 2000: a later file has a higher SEQUENCE.
std::string sequence(Moment written) {
    auto const since = written - domain::parse_moment("2000-01-01");
    return std::to_string(quantities::whole_number<long>(std::floor(quantities::in_days(since) * 1440 + 1e-6)));
}

/// "-PT2H": so long before, to the minute.
std::string trigger(quantities::Duration before) {
    long const minutes = quantities::whole_number<long>(std::round(quantities::in_days(before) * 1440));
    if (minutes == 0) return "PT0M";
    if (minutes % 1440 == 0) return "-P" + std::to_string(minutes / 1440) + "D";
    if (minutes % 60 == 0) return "-PT" + std::to_string(minutes / 60) + "H";
    return "-PT" + std::to_string(minutes) + "M";
}

std::string alarm_lines(Event const& event) {
    return ical_line("BEGIN", "VALARM") + ical_line("ACTION", "DISPLAY") +
           ical_line("TRIGGER", trigger(event.at - *event.rings)) + ical_line("DESCRIPTION", ical_text(event.summary)) +
           ical_line("END", "VALARM");
}

/// A list of TEXT values.
std::string categories(Event const& event) {
    std::string words;
    for (std::string const& one : event.categories) words += (words.empty() ? "" : ",") + ical_text(one);
    return words;
}

std::string event_lines(Event const& event, Moment written) {
    std::string const stamp = second(written) + "Z";
    std::string text = ical_line("BEGIN", "VEVENT") + ical_line("UID", event.uid) + ical_line("DTSTAMP", stamp) +
                       ical_line("LAST-MODIFIED", stamp) + ical_line("SEQUENCE", sequence(written)) +
                       ical_line("DTSTART", second(event.at)) + ical_line("SUMMARY", ical_text(event.summary));
    if (event.cancelled) text += ical_line("STATUS", "CANCELLED");
    if (!event.description.empty()) text += ical_line("DESCRIPTION", ical_text(event.description));
    if (!event.categories.empty()) text += ical_line("CATEGORIES", categories(event));
    text += ical_line("TRANSP", "TRANSPARENT");
    if (event.rings && !event.cancelled) text += alarm_lines(event);
    return text + ical_line("END", "VEVENT");
}

/// Content lines without their folds.
std::vector<std::string> unfolded(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        std::size_t const end = text.find('\n');
        std::string_view line = text.substr(0, end);
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        if (line.ends_with('\r')) line.remove_suffix(1);
        bool const goes_on = !line.empty() && (line.front() == ' ' || line.front() == '\t') && !lines.empty();
        if (goes_on) {
            lines.back() += line.substr(1);
        } else {
            lines.emplace_back(line);
        }
    }
    return lines;
}

/// "20270405T063000" or "20270405"; nothing for anything else.
std::optional<Moment> moment_in(std::string const& text) {
    if (text.size() != 8 && text.size() != 15) return std::nullopt;
    std::string iso = text.substr(0, 4) + "-" + text.substr(4, 2) + "-" + text.substr(6, 2);
    if (text.size() == 15) iso += "T" + text.substr(9, 2) + ":" + text.substr(11, 2);
    try {
        return domain::parse_moment(iso);
    } catch (BadInput const&) {
        return std::nullopt;
    }
}

/// Undoes `ical_text`.
std::string plain_text(std::string_view text) {
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
        bool const escape = text[i] == '\\' && i + 1 < text.size();
        if (escape) ++i;
        plain += escape && text[i] == 'n' ? '\n' : text[i];
    }
    return plain;
}

}  // namespace

std::string ical_line(std::string_view name, std::string_view value) {
    std::string const whole = std::string(name) + ":" + std::string(value);
    std::string folded;
    for (std::size_t at = 0; at < whole.size();) {
        std::size_t end = std::min(whole.size(), at + most_octets - (at > 0 ? 1 : 0));
        std::size_t start = end;  // of the character there
        while (start > at && start < whole.size() && end - start < longest_character && within_character(whole[start]))
            --start;
        if (start > at && end - start < longest_character) end = start;
        folded.append(at > 0 ? " " : "").append(whole, at, end - at).append("\r\n");
        at = end;
    }
    return folded;
}

std::string ical_text(std::string_view text) {
    std::string escaped;
    for (std::size_t i = 0; i < text.size(); ++i) {
        char const c = text[i];
        bool const control = (static_cast<unsigned char>(c) < 0x20 && c != '\t') || c == 0x7f;
        if (c == '\\' || c == ';' || c == ',') {
            escaped.append(1, '\\').append(1, c);
        } else if (c == '\n' || c == '\r') {
            if (c == '\n' && i > 0 && text[i - 1] == '\r') continue;  // one line end
            escaped += "\\n";
        } else {
            escaped += control ? '?' : c;
        }
    }
    return escaped;
}

std::string fingerprint(std::vector<std::string> const& parts) {
    std::uint64_t hash = 14695981039346656037U;  // offset basis and prime of FNV-1a, 64 bits
    auto const take = [&](char octet) { hash = (hash ^ static_cast<unsigned char>(octet)) * 1099511628211U; };
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) take('\x1F');
        for (char const octet : parts[i]) take(octet);
    }
    std::string digits;
    for (int shift = 60; shift >= 0; shift -= 4) digits += "0123456789abcdef"[(hash >> shift) & 15U];
    return digits;
}

std::string ical(std::string const& name, std::vector<Event> const& events, Moment written) {
    std::string text = ical_line("BEGIN", "VCALENDAR") + ical_line("VERSION", "2.0") +
                       ical_line("PRODID", "-//cropful//calendar//EN") + ical_line("CALSCALE", "GREGORIAN") +
                       ical_line("NAME", ical_text(name));
    for (Event const& event : events) text += event_lines(event, written);
    return text + ical_line("END", "VCALENDAR");
}

std::vector<Event> cancelled(std::string_view before, std::string const& name, std::vector<Event> const& events,
                             Moment from, Moment until) {
    auto const lines = unfolded(before);
    if (!ranges::contains(lines, "NAME:" + ical_text(name))) return {};
    std::set<std::string> still;
    for (Event const& event : events) still.insert(event.uid);
    std::vector<Event> gone;
    std::string uid, summary;
    std::optional<Moment> at;
    for (std::string const& line : lines) {
        std::size_t const colon = line.find(':');
        std::string const property = line.substr(0, std::min(colon, line.find(';')));
        std::string const value = colon == std::string::npos ? "" : line.substr(colon + 1);
        if (line == "BEGIN:VEVENT") {
            uid = summary = "";
            at.reset();
        }
        if (property == "UID") uid = value;
        if (property == "DTSTART") at = moment_in(value);
        if (property == "SUMMARY") summary = plain_text(value);
        bool const ours = line == "END:VEVENT" && uid.ends_with("@cropful") && at;
        if (ours && from <= *at && *at < until && !still.contains(uid)) {
            gone.push_back({.uid = uid, .at = *at, .summary = summary, .description = "", .cancelled = true});
        }
    }
    return gone;
}

}  // namespace cropful::reports
