#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/engine/plan.hpp"

/// Whether hoppers and drinkers hold while nobody is there.
namespace cropful::engine {

/// A time without anybody in the barn. All vessels are full at its start, or when the birds come in if that is later;
/// or they are as the diary last knew them.
struct Absence {
    Moment from;
    Moment until;
    double sure = 0.95;  // the chance that is sure enough, 0.5 to 0.999
    HatchChoice hatches{};
    bool as_they_are = false;  // at its start, where the diary knows it and is not out of date
};

/// One hatch's hoppers or drinkers during an absence.
struct Holding {
    std::string hatch;
    std::string vessel;
    int count = 1;
    Moment from;  // when they are full: the start of the absence, or the hatch's if that is later
    Duration age;
    Heads birds;
    domain::Amount content;  // of one full vessel: Mass for hoppers, Volume for drinkers
    bool known = false;      // it is as the diary last knew it at the start; else full
    bool of_batch = false;   // its content is a batch of what is stirred in, not to the brim
    double chance = 0;       // that none is empty before the end
    domain::Amount leave;  // what to leave in each to last with the chance asked for, feed birds cannot reach included
    double full = 0;       // the same as a share of a vessel as it is usually filled
    double fill = 0;       // as a share of `content`, which birds can reach; more than 1 when full is not enough
    int more = 0;          // vessels to add for that chance
    Band<std::optional<Duration>> lasts;  // from then until empty; absent: more than 5 years
    std::optional<Duration> safe_for;     // with the chance asked for
};

/// Why somebody must be there whatever hoppers and drinkers hold.
enum class Call { hatching, under_heat, leaving };
/// Once in an absence for each hatch and reason. Chicks hatch at `at`; from then, or from the start of the absence, on
/// they sit under heat; birds leave (a removal, a move out of the brooder, the end) at `at`.
struct Errand {
    std::string hatch;
    Call call;
    Moment at;
};

/// The whole farm in the same worlds.
struct Away {
    Absence absence;
    domain::Farm farm;
    std::vector<Holding> holdings;
    double chance = 0;                 // that nothing at all runs out
    std::optional<std::size_t> first;  // the holding that most often runs out first
    std::optional<Moment> come_by;  // with the chance asked for nothing has run out before; absent: long after the end
    std::optional<Moment> come_at;  // the last chore no later than that
    std::vector<Errand> errands;    // in order of time
    std::vector<Learned> learned;
    std::vector<Interval> alarms;
    std::vector<Assumption> assumptions;
    std::vector<Caution> cautions;
};

/// Throws NoAnswer when no hatch with a hopper or a drinker has birds then. Feed is not changed and no bird leaves
/// while nobody is there.
Away away(Season const& season, Absence const& absence);

}  // namespace cropful::engine
