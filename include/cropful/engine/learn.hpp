#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/diary.hpp"
#include "cropful/domain/farm.hpp"
#include "cropful/engine/belief.hpp"
#include "cropful/engine/level.hpp"
#include "cropful/engine/rations.hpp"

/// What a diary teaches: head counts, and how far the birds' appetite and thirst lie from the tables.
namespace cropful::engine {

using Trait = Belief::Trait;

/// From one time all of a hatch's hoppers or drinkers were full to the next.
struct Interval {
    std::string hatch;
    Trait what;
    domain::Moment from;
    domain::Moment to;
    double used;               // kg or L
    double table;              // what the table foretells
    double expected;           // what was foretold before this interval was known, from all that was learned till then
    double sds;                // how far ln(used) lies from the expected one, in standard deviations
    bool ran_empty = false;    // teaches nothing: birds went without
    bool miscounted = false;   // teaches nothing: a later count found far fewer or more birds than were reckoned with
    bool over_thrown = false;  // teaches nothing: more was thrown out than put in
    bool alarm = false;        // more than `alarm_sds` off
    bool taught = false;
};

/// Where one hatch stands after its diary.
struct Learned {
    std::string hatch;
    double feed = 1;  // use of feed and of water over the table's, at the age of the last entry
    double water = 1;
    int feed_top_ups = 0;  // that taught something
    int water_top_ups = 0;
    std::optional<domain::Moment> heads_at;  // of the last record of heads
    std::optional<Heads> heads;
};

struct Lessons {
    domain::Farm farm;                          // as asked about, with the diary's head records in its hatches
    Belief belief;                              // of its hatches, in their order
    std::vector<Interval> intervals;            // in order of time
    std::vector<Learned> learned;               // hatches the diary says something of, and others it taught about
    int misdated = 0;                           // entries before their hatch or after its end, left out
    std::vector<std::string> strangers;         // hatches the diary names and the farm has not
    std::vector<domain::Caution> heads{};       // what a grower must know of how heads were counted
    std::vector<Levels> levels{};               // of its hatches' hoppers and drinkers, in their order
    std::map<std::string, StoreCount> store{};  // of its feeds
    /// The last interval of each hatch's hoppers and drinkers, where it is an alarm.
    [[nodiscard]] std::vector<Interval> alarms() const;
    /// Those of them for one of these hatches and no older than a week before `moment`, where one is given.
    [[nodiscard]] std::vector<Interval> alarms(std::vector<std::string> const& hatches,
                                               std::optional<domain::Moment> moment) const;
    /// What must be said of a diary that does not fit the farm.
    [[nodiscard]] std::vector<domain::Caution> cautions() const;
};

/// The standard deviation of the logarithm of what a top-up measures: fills are never quite to the brim; chosen here,
/// no source.
inline constexpr double top_up_sd = 0.08;
/// An interval further off than this many standard deviations is an alarm: of healthy flocks about 1 in 22 is.
inline constexpr double alarm_sds = 2;
/// One further off than this is no measure of a healthy flock and teaches nothing: nearer ones do, for to leave out the
/// extremes of healthy flocks would make all of them look alike.
inline constexpr double useless_sds = 3;

/// What is believed of a farm's hatches, in their order, before any diary is read.
Belief untaught(domain::Farm const& farm, Rations const& rations);

/// Reads a diary against the tables. An interval more than `useless_sds` off teaches nothing, unless the one before it
/// was so to the same side as well: then it is the flock's new way, and it is learned afresh.
Lessons learn(domain::Farm const& farm, Rations const& rations, domain::Diary const& diary);

}  // namespace cropful::engine
