#include "engine/banded_usage.hpp"

#include <algorithm>

#include "engine/refills.hpp"

namespace cropful::engine {

namespace {

/// Factors by age, straight between knots, constant before the first and past the last.
struct Polyline {
    std::vector<double> ages;
    std::vector<double> values;
    [[nodiscard]] double at(double age) const {
        auto const after = std::upper_bound(ages.begin(), ages.end(), age);
        if (after == ages.begin()) return values.front();
        if (after == ages.end()) return values.back();
        auto const i = static_cast<std::size_t>(after - ages.begin());
        double const part = (age - ages[i - 1]) / (ages[i] - ages[i - 1]);
        return values[i - 1] + part * (values[i] - values[i - 1]);
    }
};

constexpr Duration look_ahead = days(60);  // fills last past the end of a plan, but not much longer

/// Ages at which the bands are worked out: where curves bend, and on both sides of where head counts jump.
std::vector<double> knots(Flock const& flock, Intake const& intake, Ages ages) {
    double const from = in_days(ages.from), to = in_days(ages.to + look_ahead);
    std::vector<double> all{from, to};
    auto const add = [&](double age) {
        if (age > from && age < to) all.push_back(age);
    };
    for (double const age : intake.spread_breaks()) add(age);
    for (double const age : flock.breaks()) add(age);
    for (double const age : flock.jumps()) add(age - in_days(instant));
    if (auto const laying = intake.laying_from()) add(in_days(*laying - instant));
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

template <class BandAt>
std::array<Polyline, 3> bands(std::vector<double> const& ages, BandAt const& band_at) {
    std::array<Polyline, 3> lines;
    for (Polyline& line : lines) line.ages = ages;
    for (double const age : ages) {
        Band<double> const band = band_at(days(age));
        lines[0].values.push_back(band.p05);
        lines[1].values.push_back(band.p50);
        lines[2].values.push_back(band.p95);
    }
    return lines;
}

template <class Amount, class Make>
BandedUsage<Amount> banded(std::array<Polyline, 3> const& lines, Make const& make) {
    auto const along = [](Polyline const& line) { return [line](double age) { return line.at(age); }; };
    auto const& knots = lines[0].ages;
    return {make({}, {}), {make(along(lines[0]), knots), make(along(lines[1]), knots), make(along(lines[2]), knots)}};
}

}  // namespace

BandedUsage<Mass> banded_feed(Flock const& flock, Intake const& intake, double extra_waste, Spread const& spread,
                              Ages ages) {
    auto const lines = bands(knots(flock, intake, ages), [&](Duration age) { return spread.hopper_band(age); });
    return banded<Mass>(lines, [&](Factor const& factor, std::vector<double> const& breaks) {
        return feed_usage(flock, intake, extra_waste, factor, breaks);
    });
}

BandedUsage<Volume> banded_water(Flock const& flock, Intake const& intake, double spill, Spread const& spread,
                                 Ages ages) {
    auto const lines = bands(knots(flock, intake, ages), [&](Duration age) { return spread.water_band(age); });
    return banded<Volume>(lines, [&](Factor const& factor, std::vector<double> const& breaks) {
        return water_usage(flock, intake, spill, factor, breaks);
    });
}

}  // namespace cropful::engine
