#pragma once

#include <cmath>
#include <functional>
#include <limits>
#include <optional>

#include "cropful/curves/running_total.hpp"
#include "engine/by_age.hpp"
#include "engine/flock.hpp"
#include "engine/intake.hpp"

namespace cropful::engine {

using namespace quantities;

inline double in_unit(Mass m) { return in_kilograms(m); }
inline double in_unit(Volume v) { return in_litres(v); }

/// A flock's use of feed (Mass) or water (Volume) over its life.
template <class Amount>
class Usage {
  public:
    explicit Usage(curves::RunningTotal total) : total_(std::move(total)) {}
    [[nodiscard]] Amount between(Duration from, Duration to) const {
        return amount(total_.between(in_days(from), in_days(to)));
    }
    /// Age at which `used` more is gone since `from`; empty when it never is.
    [[nodiscard]] std::optional<Duration> gone(Duration from, Amount used) const {
        double const age = total_.reached(in_days(from), in_unit(used));
        return std::isfinite(age) ? std::optional(days(age)) : std::nullopt;
    }

  private:
    static Mass amount_of(Mass const*, double x) { return kilograms(x); }
    static Volume amount_of(Volume const*, double x) { return litres(x); }
    static Amount amount(double x) { return amount_of(static_cast<Amount const*>(nullptr), x); }
    curves::RunningTotal total_;
};

/// What is used between two ages, in kg or L.
using Use = std::function<double(Duration, Duration)>;

template <class Amount>
Use amounts_of(Usage<Amount> const& usage) {
    return [usage](Duration from, Duration to) { return in_unit(usage.between(from, to)); };
}

/// A number by age in days, smooth between its breaks.
using Factor = std::function<double(double)>;

/// Feed the flock takes, extra waste (a fraction) included, times `factor` where there is one.
Usage<Mass> feed_usage(Flock const& flock, Intake const& intake, ByAge const& extra_waste, Factor const& factor = {},
                       std::vector<double> const& breaks = {});
/// Water the flock takes, spill (a fraction) included, times `factor` where there is one.
Usage<Volume> water_usage(Flock const& flock, Intake const& intake, ByAge const& spill, Factor const& factor = {},
                          std::vector<double> const& breaks = {});

}  // namespace cropful::engine
