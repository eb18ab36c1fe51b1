#include "cropful/commands/clock.hpp"

#include <chrono>
#include <ctime>

namespace cropful::commands {

domain::Moment now() {
    std::time_t const seconds = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    std::tm here{};
    localtime_r(&seconds, &here);
    std::chrono::year_month_day const date{std::chrono::year(here.tm_year + 1900),
                                           std::chrono::month(static_cast<unsigned>(here.tm_mon + 1)),
                                           std::chrono::day(static_cast<unsigned>(here.tm_mday))};
    return domain::Moment(date, quantities::days((here.tm_hour + here.tm_min / 60.0) / 24));
}

domain::Moment today() { return domain::Moment(now().date()); }

}  // namespace cropful::commands
