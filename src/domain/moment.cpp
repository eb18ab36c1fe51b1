#include "cropful/domain/moment.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include "cropful/fault.hpp"
#include "cropful/quantities/whole.hpp"

namespace cropful::domain {

using namespace quantities;

namespace {

constexpr double guard_days = 1e-9;  // what arithmetic may take from an exact minute: 0.1 ms

std::string two_digits(unsigned n) { return (n < 10 ? "0" : "") + std::to_string(n); }

std::chrono::sys_days day_of(double days) {
    return std::chrono::sys_days(std::chrono::days(quantities::whole_number(std::floor(days + guard_days))));
}

unsigned minute_of_day(double days) {
    double const since_midnight = days + guard_days - std::floor(days + guard_days);
    return quantities::whole_number<unsigned>(since_midnight * 1440);
}

/// The number of `count` digits at `from`, when nothing else stands there.
std::optional<unsigned> digits(std::string_view text, std::size_t from, std::size_t count) {
    if (text.size() < from + count) return std::nullopt;
    char const* const first = text.data() + from;
    unsigned value = 0;
    auto const result = std::from_chars(first, first + count, value);
    if (result.ec != std::errc{} || result.ptr != first + count) return std::nullopt;
    return value;
}

[[noreturn]] void refuse(std::string_view text, std::string const& reason) {
    throw BadInput('"' + std::string(text) + '"' + (reason.empty() ? "" : " (" + reason + ")"),
                   R"(a date such as "2027-04-05" or "2027-04-05T14:30")");
}

std::chrono::year_month_day parse_date(std::string_view text) {
    auto const year = digits(text, 0, 4);
    auto const month = digits(text, 5, 2);
    auto const day = digits(text, 8, 2);
    if (!year || !month || !day || text[4] != '-' || text[7] != '-') refuse(text, "");
    std::chrono::year_month_day const date{std::chrono::year(static_cast<int>(*year)), std::chrono::month(*month),
                                           std::chrono::day(*day)};
    if (!date.ok()) refuse(text, "there is no such day");
    if (date.year() < std::chrono::year(first_year) || date.year() > std::chrono::year(last_year))
        refuse(text, "years 2000 to 2199 only");
    return date;
}

/// "T14:30" or "T14:30:00", a blank for the T; "" is midnight.
quantities::Duration parse_time(std::string_view time, std::string_view text) {
    if (time.empty()) return quantities::days(0);
    auto const hour = digits(time, 1, 2);
    auto const minute = digits(time, 4, 2);
    bool const shaped = (time[0] == 'T' || time[0] == ' ') && hour && minute && time[3] == ':';
    bool const seconds = shaped && time.size() == 9 && time[6] == ':';
    auto const second = seconds ? digits(time, 7, 2) : 0U;
    if (!shaped || (time.size() != 6 && !seconds) || !second) refuse(text, "");
    if (*hour > 23 || *minute > 59 || *second > 59) refuse(text, "there is no such time of day");
    return quantities::days((*hour * 3600 + *minute * 60 + *second) / 86400.0);
}

}  // namespace

Moment::Moment(std::chrono::year_month_day date, quantities::Duration since_midnight)
    : days_(static_cast<double>(std::chrono::sys_days(date).time_since_epoch().count()) +
            quantities::in_days(since_midnight)) {}

std::chrono::sys_days Moment::calendar_day() const { return day_of(days_); }

Moment operator+(Moment a, quantities::Duration d) { return Moment(a.days_ + quantities::in_days(d)); }

std::string Moment::iso() const {
    unsigned const minute = minute_of_day(days_);
    return iso_date() + 'T' + two_digits(minute / 60) + ':' + two_digits(minute % 60);
}

std::string Moment::iso_date() const {
    std::chrono::year_month_day const ymd = date();
    return std::to_string(static_cast<int>(ymd.year())) + '-' + two_digits(static_cast<unsigned>(ymd.month())) + '-' +
           two_digits(static_cast<unsigned>(ymd.day()));
}

std::string Moment::day() const {
    constexpr std::array weekdays{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    constexpr std::array months{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    std::chrono::year_month_day const ymd = date();
    std::string const weekday = weekdays[std::chrono::weekday(day_of(days_)).c_encoding()];
    return weekday + ' ' + std::to_string(static_cast<unsigned>(ymd.day())) + ' ' +
           months[static_cast<unsigned>(ymd.month()) - 1];
}

std::string Moment::day_year() const { return day() + ' ' + std::to_string(static_cast<int>(date().year())); }

std::string Moment::about_hour(bool twelve_hour) const {
    unsigned const hour = minute_of_day(days_) / 60;
    if (!twelve_hour) return "about " + two_digits(hour) + ":00";
    if (hour == 0) return "about midnight";
    if (hour == 12) return "about noon";
    return "about " + std::to_string(hour % 12) + (hour < 12 ? " am" : " pm");
}

Moment parse_moment(std::string_view text) {
    std::chrono::year_month_day const date = parse_date(text);
    return Moment(date, parse_time(text.substr(10), text));
}

bool says_hour(std::string_view text) { return text.size() > std::string_view("2027-04-05").size(); }

}  // namespace cropful::domain
