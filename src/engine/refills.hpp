#pragma once

#include "cropful/engine/plan.hpp"
#include "engine/usage.hpp"

namespace cropful::engine {

/// Bulk density of a feed: as stated, else its form's central figure (crumble when no form is stated).
MassPerVolume bulk_density(domain::Feed const& feed, Rations const& rations);

/// Every fill of a hatch's hoppers between two ages: when one is empty, and at each change of feed.
Vessels<Mass> hopper_fills(domain::Hatch const& hatch, domain::Hopper const& hopper, Usage<Mass> const& usage,
                           Flock const& flock, Intake const& intake, Rations const& rations, Duration from,
                           Duration to);

/// Every fill of a hatch's drinkers: when dry, when a change is due, when what is mixed in has lived its life.
Vessels<Volume> drinker_fills(domain::Hatch const& hatch, domain::Drinker const& drinker,
                              domain::Supplement const* supplement, Usage<Volume> const& usage, Flock const& flock,
                              Duration from, Duration to);

/// The age at which a supplement course is over.
Duration course_ends(domain::Supplement const& supplement);
/// How long one mix is given: a day, or less when the solution keeps less.
Duration batch_life(domain::Supplement const& supplement);

/// Ages nearer than this are one moment: what arithmetic may take from or add to a sum of days.
inline constexpr Duration instant = days(1e-9);

}  // namespace cropful::engine
