#pragma once

#include "cropful/engine/plan.hpp"
#include "engine/banded_usage.hpp"

namespace cropful::engine {

using namespace quantities;

/// Bulk density of a feed: as stated, else its form's central figure (crumble when no form is stated).
MassPerVolume bulk_density(domain::Feed const& feed, Rations const& rations);

/// What one hopper holds of a feed that birds can reach, as it is left at each fill.
Mass hopper_content(domain::Hopper const& hopper, domain::Feed const& feed, Rations const& rations);

/// Every fill of a hatch's hoppers between two ages: at the safe end of how long the last one lasts, and at each change
/// of feed.
Vessels<Mass> hopper_fills(domain::Hatch const& hatch, domain::Hopper const& hopper, BandedUsage<Mass> const& usage,
                           Flock const& flock, Intake const& intake, Rations const& rations, Ages ages);

/// Every fill of a hatch's drinkers: at the safe end of when they are dry, when a change is due, when what is mixed in
/// has lived its life.
Vessels<Volume> drinker_fills(domain::Hatch const& hatch, domain::Drinker const& drinker,
                              domain::Supplement const* supplement, BandedUsage<Volume> const& usage,
                              Flock const& flock, Ages ages);

/// The age at which a supplement course is over.
Duration course_ends(domain::Supplement const& supplement);
/// How long one mix is given: a day, or less when the solution keeps less.
Duration batch_life(domain::Supplement const& supplement);

/// Ages nearer than this are one moment: what arithmetic may take from or add to a sum of days.
inline constexpr Duration instant = days(1e-9);

}  // namespace cropful::engine
