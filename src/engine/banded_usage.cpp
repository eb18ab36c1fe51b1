#include "engine/banded_usage.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// `rate` is what one bird uses a day at an age in days, kg or L.
UseLaw law(FlockInDoubt const& one, Flock const& flock, Factor const& rate, ByAge const& lost, double thirst,
           double measure_sd) {
    auto bends = one.intake.breaks();
    auto const jumps = lost.breaks();
    bends.insert(bends.end(), jumps.begin(), jumps.end());
    curves::RunningTotal const total(rate, bends);
    UseLaw::Terms terms{
        .per_bird = [total](Duration from, Duration to) { return total.between(in_days(from), in_days(to)); },
        .appetite = [intake = one.intake](double age) { return intake.feed_sd(days(age)); },
        .thirst = thirst,
        .measure_sd = measure_sd,
        .breaks = flock.breaks()};
    terms.breaks.insert(terms.breaks.end(), bends.begin(), bends.end());
    return {one.hatch, one.kind, std::move(terms), one.belief, one.number, one.first};
}

}  // namespace

BandedUsage<Mass> banded_feed(FlockInDoubt const& one, ByAge const& extra_waste, double measure_sd) {
    Flock const flock(one.hatch, one.kind);
    auto const rate = [intake = one.intake, extra_waste](double age) {
        return in_kilograms_per_day(birds(1) * intake.feed(days(age))) / (1 - extra_waste.at(age));
    };
    return {feed_usage(flock, one.intake, extra_waste), law(one, flock, rate, extra_waste, 0, measure_sd)};
}

BandedUsage<Volume> banded_water(FlockInDoubt const& one, ByAge const& spill) {
    Flock const flock(one.hatch, one.kind);
    auto const rate = [intake = one.intake, spill](double age) {
        return in_litres_per_day(birds(1) * intake.water(days(age))) / (1 - spill.at(age));
    };
    return {water_usage(flock, one.intake, spill), law(one, flock, rate, spill, one.intake.water_sd(), 0)};
}

}  // namespace cropful::engine
