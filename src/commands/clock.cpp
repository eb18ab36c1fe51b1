#include "cropful/commands/clock.hpp"

#include <chrono>
#include <cstdlib>
#include <ctime>

#include "cropful/commands/flags.hpp"

namespace cropful::commands {

namespace {

std::time_t seconds() { return std::chrono::system_clock::to_time_t(std::chrono::system_clock::now()); }

domain::Moment moment(std::tm const& clock) {
    std::chrono::year_month_day const date{std::chrono::year(clock.tm_year + 1900),
                                           std::chrono::month(static_cast<unsigned>(clock.tm_mon + 1)),
                                           std::chrono::day(static_cast<unsigned>(clock.tm_mday))};
    return domain::Moment(date, quantities::days((clock.tm_hour + clock.tm_min / 60.0) / 24));
}

std::tm here() {
    std::time_t const since_1970 = seconds();
    std::tm clock{};
    localtime_r(&since_1970, &clock);
    return clock;
}

}  // namespace

domain::Moment now() {
    char const* const instead = std::getenv("CROPFUL_NOW");
    if (instead == nullptr || *instead == '\0') return moment(here());
    Flags one;
    one.set("CROPFUL_NOW", instead);
    return *one.read("CROPFUL_NOW", domain::parse_moment);
}

std::chrono::minutes now_utc_offset() { return std::chrono::minutes(here().tm_gmtoff / 60); }

domain::Moment now_utc() {
    std::time_t const since_1970 = seconds();
    std::tm greenwich{};
    gmtime_r(&since_1970, &greenwich);
    return moment(greenwich);
}

}  // namespace cropful::commands
