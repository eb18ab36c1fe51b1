#pragma once

#include <array>

#include "cropful/engine/band.hpp"
#include "engine/spread.hpp"
#include "engine/usage.hpp"

namespace cropful::engine {

/// A flock's use, and what it takes of a vessel's content in the lowest 5 %, the middle and the highest 5 % of worlds.
/// Worlds keep their order from one age to the next closely enough that the band of a total is the total of the bands.
template <class Amount>
struct BandedUsage {
    Usage<Amount> central;
    std::array<Usage<Amount>, 3> at;  // 5, 50 and 95 %

    /// Days until `content` is gone; the hungriest worlds are first.
    [[nodiscard]] Band<std::optional<Duration>> gone_after(Duration from, Amount content) const {
        auto const days_to = [&](Usage<Amount> const& usage) -> std::optional<Duration> {
            auto const age = usage.gone(from, content);
            return age ? std::optional(*age - from) : std::nullopt;
        };
        return {days_to(at[2]), days_to(at[1]), days_to(at[0])};
    }
};

/// Between two ages. Bands are worked out for some time past the second too, and stay as they are then.
struct Ages {
    Duration from;
    Duration to;
};

/// Feed out of hoppers, whose content by weight is itself uncertain.
BandedUsage<Mass> banded_feed(Flock const& flock, Intake const& intake, double extra_waste, Spread const& spread,
                              Ages ages);
BandedUsage<Volume> banded_water(Flock const& flock, Intake const& intake, double spill, Spread const& spread,
                                 Ages ages);

}  // namespace cropful::engine
