#include "reports/ical.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace cropful;
using namespace cropful::reports;

// RFC 5545, 3.3.11: backslash, semicolon, comma and line end are escaped, the first example is its own.
TEST_CASE("text is escaped", "[reports]") {
    CHECK(ical_text("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.") ==
          "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
    CHECK(ical_text("a\\b;c,d:e\"f") == "a\\\\b\\;c\\,d:e\"f");
    CHECK(ical_text("a\r\nb\rc\n\nd\n\re") == "a\\nb\\nc\\n\\nd\\n\\ne");
    CHECK(ical_text("tab\there \x07 \x7f") == "tab\there ? ?");
    CHECK(ical_text("<script>&é🐦") == "<script>&é🐦");
}

// RFC 5545, 3.1: at most 75 octets without the line end; a folded line goes on behind a blank.
TEST_CASE("lines are folded at 75 octets", "[reports]") {
    std::string const a70(70, 'a');
    CHECK(ical_line("NAME", a70) == "NAME:" + a70 + "\r\n");
    CHECK(ical_line("NAME", a70 + "b") == "NAME:" + a70 + "\r\n b\r\n");
    CHECK(ical_line("NAME", a70 + std::string(74, 'b') + "c") ==
          "NAME:" + a70 + "\r\n " + std::string(74, 'b') + "\r\n c\r\n");
}

TEST_CASE("a character is never broken", "[reports]") {
    std::string const a69(69, 'a');
    CHECK(ical_line("NAME", a69 + "é") == "NAME:" + a69 + "\r\n é\r\n");                        // 2 octets at 75 and 76
    CHECK(ical_line("NAME", a69.substr(2) + "🐦b") == "NAME:" + a69.substr(2) + "\r\n 🐦b\r\n");  // 4 octets at 73 to 76
    CHECK(ical_line("NAME", a69.substr(3) + "🐦b") == "NAME:" + a69.substr(3) + "🐦\r\n b\r\n");
}

TEST_CASE("bytes that are no characters are folded all the same", "[reports]") {
    std::string const folded = ical_line("NAME", std::string(200, '\x80'));
    CHECK(folded.size() == 5 + 200 + 2 * 1 + 3 * 2);  // two blanks, three line ends
    CHECK(std::count(folded.begin(), folded.end(), '\x80') == 200);
}

// The vectors of FNV's authors (draft-eastlake-fnv, appendix C); of two parts, by Python.
TEST_CASE("fingerprints are FNV-1a of 64 bits", "[reports]") {
    CHECK(fingerprint({""}) == "cbf29ce484222325");
    CHECK(fingerprint({"a"}) == "af63dc4c8601ec8c");
    CHECK(fingerprint({"foobar"}) == "85944171f73967e8");
    CHECK(fingerprint({"ab", "c"}) != fingerprint({"a", "bc"}));
    CHECK(fingerprint({"a", ""}) != fingerprint({"a"}));
}

namespace {

Event chore_event(std::string const& uid, char const* at) {
    return {.uid = uid, .at = domain::parse_moment(at), .summary = "Move, soon", .description = "now"};
}

std::string set_in_2000(std::vector<Event> const& events) {
    return ical("Farm", events, domain::parse_moment("2000-01-02T00:01"));  // 1441 minutes into the year 2000
}

}  // namespace

TEST_CASE("an event of a chore that rings, and one that is cancelled", "[reports]") {
    Event chore = chore_event("1@cropful", "2027-04-05T06:30");
    chore.categories = {"move", "a, b"};
    chore.rings = domain::parse_moment("2027-04-05T05:00");
    Event gone = chore_event("2@cropful", "2027-04-05T18:00");
    gone.description = "";
    gone.rings = gone.at;
    gone.cancelled = true;
    CHECK(set_in_2000({chore, gone}) ==
          "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//cropful//calendar//EN\r\nCALSCALE:GREGORIAN\r\nNAME:Farm\r\n"
          "BEGIN:VEVENT\r\nUID:1@cropful\r\nDTSTAMP:20000102T000100Z\r\nLAST-MODIFIED:20000102T000100Z\r\n"
          "SEQUENCE:1441\r\nDTSTART:20270405T063000\r\nSUMMARY:Move\\, soon\r\nDESCRIPTION:now\r\n"
          "CATEGORIES:move,a\\, b\r\nTRANSP:TRANSPARENT\r\nBEGIN:VALARM\r\nACTION:DISPLAY\r\nTRIGGER:-PT90M\r\n"
          "DESCRIPTION:Move\\, soon\r\nEND:VALARM\r\nEND:VEVENT\r\n"
          "BEGIN:VEVENT\r\nUID:2@cropful\r\nDTSTAMP:20000102T000100Z\r\nLAST-MODIFIED:20000102T000100Z\r\n"
          "SEQUENCE:1441\r\nDTSTART:20270405T180000\r\nSUMMARY:Move\\, soon\r\nSTATUS:CANCELLED\r\n"
          "TRANSP:TRANSPARENT\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n");
}

// RFC 5545, 3.3.6: a duration in the largest unit that says it.
TEST_CASE("an alarm rings at its moment", "[reports]") {
    Event chore = chore_event("1@cropful", "2027-04-05T06:30");
    CHECK(set_in_2000({chore}).find("VALARM") == std::string::npos);
    auto const rings = [&](char const* at, std::string const& trigger) {
        chore.rings = domain::parse_moment(at);
        return set_in_2000({chore}).find("TRIGGER:" + trigger + "\r\n") != std::string::npos;
    };
    CHECK(rings("2027-04-05T06:30", "PT0M"));
    CHECK(rings("2027-04-05T04:30", "-PT2H"));
    CHECK(rings("2027-03-22T06:30", "-P14D"));
    CHECK(rings("2027-04-04T18:00", "-PT750M"));
}

TEST_CASE("what an older calendar holds and the new one does not is cancelled, between two moments", "[reports]") {
    std::string const name(90, 'n');  // folded
    Event long_named = chore_event("b@cropful", "2027-04-06T18:00");
    long_named.summary = name + "; a\\b, c";
    std::string const before = set_in_2000(
        {chore_event("past@cropful", "2027-04-05T06:30"), chore_event("a@cropful", "2027-04-06T06:30"), long_named,
         chore_event("somebody@else", "2027-04-06T18:00"), chore_event("late@cropful", "2027-04-07T06:30")});
    auto const from = domain::parse_moment("2027-04-06T06:30"), until = domain::parse_moment("2027-04-07T06:30");
    auto const gone = cancelled(before, {chore_event("a@cropful", "2027-04-06T06:30")}, from, until);
    REQUIRE(gone.size() == 1);
    CHECK(gone[0].uid == "b@cropful");
    CHECK(gone[0].at.iso() == "2027-04-06T18:00");
    CHECK(gone[0].summary == long_named.summary);
    CHECK(gone[0].cancelled);
    CHECK(cancelled(before, {}, from, until).size() == 2);  // from its first moment on, and not at its last
    CHECK(cancelled("", {}, from, until).empty());
    CHECK(cancelled("no calendar\nUID:x@cropful\nEND:VEVENT", {}, from, until).empty());
}
