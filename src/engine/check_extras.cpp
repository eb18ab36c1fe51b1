#include "engine/check_extras.hpp"

#include <algorithm>

namespace cropful::engine {

DailyProtein daily_protein(Check const& check, Intake const& intake, Duration age) {
    auto const in_a_day = [](MassPerBirdDay rate) -> Mass { return rate * birds(1) * days(1); };
    DailyProtein protein{{}, in_a_day(intake.feed_of_energy(age, check.table_energy) * (check.printed / 100))};
    if (check.label) protein.given = in_a_day(intake.feed(age) * (*check.label / 100));
    return protein;
}

void add_daily_protein(std::vector<Check>& checks, Intake const& intake) {
    for (Check& check : checks) {
        if (check.nutrient != "protein" || !check.label) continue;
        DailyProtein const middle = daily_protein(check, intake, check.from + (check.to - check.from) / 2.0);
        check.given_per_bird = middle.given;
        check.need_per_bird = middle.need;
    }
}

double most_stated(Check const& check) { return std::max(check.label.value_or(0), check.label_maximum.value_or(0)); }

void mark_excess_calcium(std::vector<Check>& checks, std::vector<Limit> const& limits,
                         std::optional<Duration> laying_from) {
    double lowest = 100;
    for (Limit const& limit : limits) {
        if (limit.key == "calcium_feed") lowest = std::min(lowest, limit.level * 100);
    }
    for (Check& check : checks) {
        bool const growing = !laying_from || check.from < *laying_from;
        if (check.nutrient == "calcium" && growing && most_stated(check) > lowest) check.verdict = Verdict::over;
    }
}

}  // namespace cropful::engine
