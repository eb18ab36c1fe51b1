#include "engine/usage.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

std::vector<double> all_breaks(Flock const& flock, Intake const& intake, ByAge const& lost,
                               std::vector<double> const& more) {
    std::vector<double> ages = flock.breaks();
    for (auto const& some : {intake.breaks(), lost.breaks(), more}) ages.insert(ages.end(), some.begin(), some.end());
    return ages;
}

Factor times(Factor const& rate, Factor const& factor) {
    if (!factor) return rate;
    return [rate, factor](double age) { return rate(age) * factor(age); };
}

}  // namespace

Usage<Mass> feed_usage(Flock const& flock, Intake const& intake, ByAge const& extra_waste, Factor const& factor,
                       std::vector<double> const& breaks) {
    auto const rate = [flock, intake, extra_waste](double age) {
        return in_kilograms_per_day(flock.alive(days(age)) * intake.feed(days(age))) / (1 - extra_waste.at(age));
    };
    return Usage<Mass>({times(rate, factor), all_breaks(flock, intake, extra_waste, breaks)});
}

Usage<Volume> water_usage(Flock const& flock, Intake const& intake, ByAge const& spill, Factor const& factor,
                          std::vector<double> const& breaks) {
    auto const rate = [flock, intake, spill](double age) {
        return in_litres_per_day(flock.alive(days(age)) * intake.water(days(age))) / (1 - spill.at(age));
    };
    return Usage<Volume>({times(rate, factor), all_breaks(flock, intake, spill, breaks)});
}

}  // namespace cropful::engine
