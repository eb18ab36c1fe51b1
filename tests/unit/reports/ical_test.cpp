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

TEST_CASE("an event that rings, and one that does not", "[reports]") {
    auto const at = domain::parse_moment("2027-04-05T06:30");
    Event const fetch{.uid = "1@x",
                      .at = at,
                      .summary = "Fetch, soon",
                      .description = "now",
                      .categories = {"fetch", "a, b"},
                      .rings = domain::parse_moment("2027-04-05T05:00")};
    Event const look{.uid = "2@x", .at = at, .summary = "Look", .description = "in", .categories = {"look"}};
    CHECK(ical("Farm", {fetch, look}, domain::parse_moment("2000-01-02T00:01")) ==
          "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//cropful//calendar//EN\r\nCALSCALE:GREGORIAN\r\nNAME:Farm\r\n"
          "BEGIN:VEVENT\r\nUID:1@x\r\nDTSTAMP:20000102T000100Z\r\nLAST-MODIFIED:20000102T000100Z\r\nSEQUENCE:1441\r\n"
          "DTSTART:20270405T063000\r\nSUMMARY:Fetch\\, soon\r\nDESCRIPTION:now\r\nCATEGORIES:fetch,a\\, b\r\n"
          "TRANSP:TRANSPARENT\r\nBEGIN:VALARM\r\nACTION:DISPLAY\r\nTRIGGER:-PT90M\r\nDESCRIPTION:Fetch\\, soon\r\n"
          "END:VALARM\r\nEND:VEVENT\r\n"
          "BEGIN:VEVENT\r\nUID:2@x\r\nDTSTAMP:20000102T000100Z\r\nLAST-MODIFIED:20000102T000100Z\r\nSEQUENCE:1441\r\n"
          "DTSTART:20270405T063000\r\nSUMMARY:Look\r\nDESCRIPTION:in\r\nCATEGORIES:look\r\n"
          "TRANSP:TRANSPARENT\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n");
}

TEST_CASE("what a calendar written before has and is no more is cancelled, from a moment to another", "[reports]") {
    auto const moment = [](char const* text) { return domain::parse_moment(text); };
    auto const event = [&](char const* uid, char const* at) {
        return Event{.uid = std::string(uid) + "@cropful", .at = moment(at), .summary = "A; b", .description = ""};
    };
    std::string const before =
        ical("Farm",
             {event("past", "2027-04-01T07:00"),
              event("gone", "2027-04-05T07:00"),
              event("kept", "2027-04-06T07:00"),
              event("beyond", "2027-05-01T07:00"),
              {.uid = "1@others", .at = moment("2027-04-05T07:00"), .summary = "", .description = ""}},
             moment("2027-03-01"));
    std::vector<Event> const now{event("kept", "2027-04-06T07:00")};
    auto const gone = cancelled(before, "Farm", now, moment("2027-04-04"), moment("2027-05-01"));
    CHECK(cancelled(before, "Other farm", now, moment("2027-04-04"), moment("2027-05-01")).empty());
    REQUIRE(gone.size() == 1);
    CHECK(gone.front().uid == "gone@cropful");
    CHECK(gone.front().at.iso() == "2027-04-05T07:00");
    CHECK(gone.front().summary == "A; b");
    CHECK(ical("Farm", gone, moment("2027-03-02")).find("STATUS:CANCELLED\r\n") != std::string::npos);
    CHECK(cancelled("", "Farm", {}, moment("2027-01-01"), moment("2028-01-01")).empty());
    CHECK(cancelled("no calendar\n\nat all", "Farm", {}, moment("2027-01-01"), moment("2028-01-01")).empty());
}
