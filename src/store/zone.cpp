#include "cropful/store/zone.hpp"

#include <algorithm>
#include <cmath>
#include <ctime>
#include <optional>

#include "cropful/quantities/whole.hpp"

namespace cropful::store {

namespace {

std::chrono::minutes rounded(long seconds) {
    return std::chrono::round<std::chrono::minutes>(std::chrono::seconds(seconds));
}

/// `minute` since 1970 read as wall-clock time, with summer time or without; empty where the clock never shows it so.
std::optional<std::chrono::minutes> offset(long minute, bool summer) {
    std::tm clock{};
    clock.tm_year = 70;
    clock.tm_mday = 1 + static_cast<int>(minute / 1440);
    clock.tm_hour = static_cast<int>(minute % 1440 / 60);
    clock.tm_min = static_cast<int>(minute % 60);
    clock.tm_isdst = summer ? 1 : 0;
    std::time_t const at = std::mktime(&clock);
    std::tm shown{};
    localtime_r(&at, &shown);
    auto const ahead = rounded(shown.tm_gmtoff);
    bool const shows_it = rounded(at).count() + ahead.count() == minute;
    if (!shows_it || (shown.tm_isdst > 0) != summer) return std::nullopt;
    return ahead;
}

}  // namespace

std::chrono::minutes local_offset(domain::Moment at) {
    static domain::Moment const start(std::chrono::year_month_day(std::chrono::sys_days{}));
    long const minute = quantities::whole_number<long>(std::round(quantities::in_days(at - start) * 1440));
    auto const summer = offset(minute, true), winter = offset(minute, false);
    if (summer && winter) return std::max(*summer, *winter);  // an hour shown twice: the first, furthest ahead of UTC
    if (summer || winter) return summer ? *summer : *winter;
    return offset(minute - 60, false).value_or(offset(minute - 60, true).value_or(std::chrono::minutes(0)));
}

}  // namespace cropful::store
