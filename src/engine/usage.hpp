#pragma once

#include <cmath>
#include <limits>
#include <optional>

#include "cropful/curves/running_total.hpp"
#include "engine/flock.hpp"
#include "engine/intake.hpp"

namespace cropful::engine {

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
    static double in_unit(Mass m) { return in_kilograms(m); }
    static double in_unit(Volume v) { return in_litres(v); }
    curves::RunningTotal total_;
};

/// Feed the flock takes, extra waste (a fraction) included.
Usage<Mass> feed_usage(Flock const& flock, Intake const& intake, double extra_waste);
/// Water the flock takes, spill (a fraction) included.
Usage<Volume> water_usage(Flock const& flock, Intake const& intake, double spill);

}  // namespace cropful::engine
