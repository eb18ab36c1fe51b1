#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "cropful/engine/level.hpp"
#include "cropful/engine/plan.hpp"
#include "engine/banded_usage.hpp"
#include "engine/chores.hpp"
#include "engine/instant.hpp"
#include "engine/lodging.hpp"

namespace cropful::engine {

using namespace quantities;

/// Bulk density of a feed: as stated, else its form's central figure (crumble when no form is stated).
MassPerVolume bulk_density(domain::Feed const& feed, Rations const& rations);

/// What one hopper holds of a feed that birds can reach, filled to where it is filled at most.
Mass hopper_content(domain::Hopper const& hopper, domain::Feed const& feed, Rations const& rations);
/// And what then stays in it, out of reach.
Mass stays_behind(domain::Hopper const& hopper, domain::Feed const& feed, Rations const& rations);

/// How long feed stays wholesome in any hopper that is filled at an age, and in one whose owner may know better.
Duration usually_wholesome(Duration age);
Duration wholesome(domain::Hopper const& hopper, Duration age);

/// One hatch, and what tells when its vessels are seen to.
struct Tended {
    domain::Farm const& farm;
    domain::Hatch const& hatch;
    Flock const& flock;
    ChoresByAge chores;
    Duration begun;                 // fills before that age are left out
    std::optional<Duration> now{};  // what was due by that age and is not written is still to be done
    std::optional<Level> feed{};    // what is known of its vessels
    std::optional<Level> water{};
    std::map<std::string, Duration> counted{};  // ages at which the store was, feed by feed
    bool out_of_date = false;  // set where what is known is older than the vessels last for certain: it is left out
};

/// Every fill of a stage's hoppers. Somebody comes at the last chore before they are empty for certain (19 times in
/// 20) or what is in them has stood too long. Then they are filled with what that flock needs until the next time, to
/// the brim at most; the last time before another feed, another house or the end, with what is needed till then.
/// `hungry` is what the farm's hungry flock eats between two ages of one feed, in kg. The fills follow what is known of
/// the hoppers, or what was planned where nothing is.
struct HopperFills {
    Vessels<Mass> vessels;
    std::map<std::string, FeedAccount> account{};  // of each feed
};
HopperFills hopper_fills(Tended& tended, Lodging const& lodging, BandedUsage<Mass> const& usage, Use const& hungry,
                         Rations const& rations);

/// Every fill of a stage's drinkers, and every batch that is stirred into them: at the last chore before they are dry
/// for certain, when a change is due, when a batch has lived its life. Courses begin and end at chores.
struct DrinkerFills {
    Vessels<Volume> vessels;
    std::vector<std::pair<domain::Course, Batch>> batches{};
};
DrinkerFills drinker_fills(Tended& tended, Lodging const& lodging, BandedUsage<Volume> const& usage,
                           std::vector<domain::Course> const& courses);

/// How long one mix is given: a day, or less when the solution keeps less.
Duration batch_life(domain::Supplement const& supplement);
/// The age at which a course is over.
Duration course_ends(domain::Course const& course);

/// What is known of vessels that hold so much when full, as a start at the age it was known; nothing where that is not
/// between two ages.
template <class Amount>
struct Start {
    Duration age;
    Amount content;  // of all of them, usable
};
/// `level` is one of `tended`.
template <class Amount>
std::optional<Start<Amount>> known_start(Tended const& tended, std::optional<Level> const& level, Amount brim,
                                         Duration from, Duration to) {
    if (!level) return std::nullopt;
    Duration const age = level->at - tended.hatch.date;
    if (age + instant < from || !(age < to) || tended.begun + instant < age) return std::nullopt;
    Amount const more = brim * (level->more / in_unit(brim));
    Amount const base = level->left ? brim * (*level->left / in_unit(brim)) : level->full ? brim : brim * 0.0;
    return Start<Amount>{age, std::max(base + more, brim * 0.0)};
}

/// The vessels of a stage as if all of them were filled to the brim at an age, or as they were last known before it.
Vessels<Mass> full_hoppers(Tended const& tended, Lodging const& lodging, BandedUsage<Mass> const& usage,
                           Rations const& rations, Duration age);
Vessels<Volume> full_drinkers(Tended& tended, Lodging const& lodging, BandedUsage<Volume> const& usage,
                              std::vector<domain::Course> const& courses, Duration age);

}  // namespace cropful::engine
