#include "engine/usage.hpp"

namespace cropful::engine {

namespace {

std::vector<double> all_breaks(Flock const& flock, Intake const& intake) {
    std::vector<double> ages = flock.breaks();
    std::vector<double> const more = intake.breaks();
    ages.insert(ages.end(), more.begin(), more.end());
    return ages;
}

}  // namespace

Usage<Mass> feed_usage(Flock const& flock, Intake const& intake, double extra_waste) {
    auto const rate = [flock, intake, extra_waste](double age) {
        return in_kilograms_per_day(flock.alive(days(age)) * intake.feed(days(age))) / (1 - extra_waste);
    };
    return Usage<Mass>({rate, all_breaks(flock, intake)});
}

Usage<Volume> water_usage(Flock const& flock, Intake const& intake, double spill) {
    auto const rate = [flock, intake, spill](double age) {
        return in_litres_per_day(flock.alive(days(age)) * intake.water(days(age))) / (1 - spill);
    };
    return Usage<Volume>({rate, all_breaks(flock, intake)});
}

}  // namespace cropful::engine
