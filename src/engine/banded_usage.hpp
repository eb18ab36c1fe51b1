#pragma once

#include "cropful/engine/band.hpp"
#include "engine/use_law.hpp"

namespace cropful::engine {

using namespace quantities;

/// A flock's central use, and the law of how far flocks lie from it.
template <class Amount>
struct BandedUsage {
    Usage<Amount> central;
    UseLaw law;

    /// Days until `content` is gone; the hungriest worlds are first.
    [[nodiscard]] Band<std::optional<Duration>> gone_after(Duration from, Amount content) const {
        auto const gone = central.gone(from, content);
        return law.gone_after(from, in_unit(content), gone ? std::optional(*gone - from) : std::nullopt);
    }
    /// What is used between two ages; nothing where the central flock uses nothing.
    [[nodiscard]] Band<Amount> band(Duration from, Duration to) const {
        Amount const usual = central.between(from, to);
        double const about = in_unit(usual);
        if (!(about > 0)) return {usual, usual, usual};
        Band<double> const band = law.used(from, to, about);
        return {usual * (band.p05 / about), usual * (band.p50 / about), usual * (band.p95 / about)};
    }
};

/// One flock, its intake at the means of what is believed, and the age from which on it is asked about.
struct FlockInDoubt {
    domain::Hatch const& hatch;
    Kind const& kind;
    Intake const& intake;
    Belief const& belief;
    std::size_t number;
    Duration first;
};

/// Feed; `measure_sd` is of the logarithm of what its hoppers hold by weight.
BandedUsage<Mass> banded_feed(FlockInDoubt const& one, ByAge const& extra_waste, double measure_sd);
BandedUsage<Volume> banded_water(FlockInDoubt const& one, ByAge const& spill);

}  // namespace cropful::engine
