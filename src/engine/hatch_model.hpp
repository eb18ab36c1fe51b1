#pragma once

#include <optional>

#include "cropful/engine/season.hpp"
#include "engine/banded_usage.hpp"
#include "engine/lodging.hpp"
#include "engine/sway.hpp"

namespace cropful::engine {

using namespace quantities;

/// One hatch of a season: its flock, and what one bird eats and drinks at the believed means.
class HatchModel {
  public:
    HatchModel(Season const& season, std::size_t number);
    [[nodiscard]] domain::Hatch const& hatch() const { return hatch_; }
    [[nodiscard]] Kind const& kind() const { return kind_; }
    /// Throws NoAnswer where more birds leave than there are.
    [[nodiscard]] Flock const& flock() const;
    [[nodiscard]] Intake const& intake() const { return intake_; }
    /// In every world of the season.
    [[nodiscard]] Sway const& sway() const;
    /// From its first age on, out of hoppers whose volumes are known; and of water.
    [[nodiscard]] BandedUsage<Mass> const& hopper_feed() const;
    [[nodiscard]] BandedUsage<Volume> const& drinker_water() const;
    /// By weight, from an age on.
    [[nodiscard]] BandedUsage<Mass> feed_from(Duration age) const;
    /// In the middle flock.
    [[nodiscard]] Usage<Mass> const& feed() const;
    [[nodiscard]] Usage<Volume> const& water() const;
    /// What is eaten in every world over ages cut into pieces no longer than `longest`, in kg.
    [[nodiscard]] std::vector<double> eaten(Ages ages, Duration longest) const;
    /// Birds at an age in all but the most crowded 5 % of worlds.
    [[nodiscard]] Heads sure_heads(Duration age) const;
    /// What the diary last knew of its hoppers and drinkers.
    [[nodiscard]] Levels const& levels() const { return season_.lessons().levels[number_]; }
    /// Where it lives.
    [[nodiscard]] std::vector<Lodging> const& lodgings() const;

  private:
    [[nodiscard]] FlockInDoubt in_doubt(Duration first) const;
    Season const& season_;
    std::size_t number_;
    domain::Hatch const& hatch_;
    Kind const& kind_;
    Intake intake_;
    ByAge extra_waste_;
    ByAge spill_;
    mutable std::optional<Flock> flock_;
    mutable std::optional<Usage<Mass>> feed_;
    mutable std::optional<Usage<Volume>> water_;
    mutable std::optional<BandedUsage<Mass>> hopper_feed_;
    mutable std::optional<BandedUsage<Volume>> drinker_water_;
    mutable std::optional<Spread> spread_;
    mutable std::optional<Sway> sway_;
    mutable std::vector<Lodging> lodgings_;
};

}  // namespace cropful::engine
