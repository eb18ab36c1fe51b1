#include "engine/check_extras.hpp"

#include <algorithm>

namespace cropful::engine {

void add_daily_protein(std::vector<Check>& checks, Intake const& intake) {
    for (Check& check : checks) {
        if (check.nutrient != "protein" || !check.label) continue;
        Duration const middle = check.from + (check.to - check.from) / 2.0;
        MassPerBirdDay const eaten = intake.feed(middle);
        auto const in_a_day = [](MassPerBirdDay rate) -> Mass { return rate * birds(1) * days(1); };
        check.given_per_bird = in_a_day(eaten * (*check.label / 100));
        MassPerBirdDay const of_the_tables_feed = intake.feed_of_energy(middle, check.table_energy);
        check.need_per_bird = in_a_day(of_the_tables_feed * (check.printed / 100));
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
