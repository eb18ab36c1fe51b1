#pragma once

#include <chrono>
#include <compare>
#include <string>
#include <string_view>

#include "cropful/quantities/make.hpp"

namespace cropful::domain {

/// A wall-clock moment: days of 24 h, no time zones. A date alone is 00:00.
class Moment {
  public:
    explicit Moment(std::chrono::year_month_day date, quantities::Duration since_midnight = quantities::days(0));
    /// The day it lies on. What lies less than 0.1 ms before midnight belongs to the day that begins then.
    [[nodiscard]] std::chrono::sys_days calendar_day() const;
    [[nodiscard]] std::chrono::year_month_day date() const { return calendar_day(); }
    friend Moment operator+(Moment a, quantities::Duration d);
    friend quantities::Duration operator-(Moment a, Moment b) { return quantities::days(a.days_ - b.days_); }
    friend std::partial_ordering operator<=>(Moment, Moment) = default;

    [[nodiscard]] std::string iso() const;       // "2027-04-08T14:37", to the minute
    [[nodiscard]] std::string iso_date() const;  // "2027-04-08"
    [[nodiscard]] std::string day() const;       // "Thu 8 Apr"
    [[nodiscard]] std::string day_year() const;  // "Thu 8 Apr 2027"
    /// "about 2 pm" / "about 14:00": the hour just past, so it is never later than the truth.
    [[nodiscard]] std::string about_hour(bool twelve_hour) const;

  private:
    explicit Moment(double days) : days_(days) {}
    double days_;  // since 1970-01-01T00:00
};

/// The years dates may lie in.
inline constexpr int first_year = 2000;
inline constexpr int last_year = 2199;

/// "2027-04-05" or "2027-04-05T14:30"; throws BadInput. Years 2000 to 2199.
Moment parse_moment(std::string_view text);
/// Whether such a text says more than the day.
bool says_hour(std::string_view text);

}  // namespace cropful::domain
