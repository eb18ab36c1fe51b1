#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/engine/buying.hpp"
#include "cropful/engine/plan.hpp"

/// What is to be done in the barn, and when: the one list that today's page, the calendar and the sheets print.
namespace cropful::engine {

/// In the order in which it is done at one chore for one hatch.
enum class Work {
    look,
    top_up,
    change_water,
    stir,
    change_feed,
    warmth,
    move,
    ready,
    remove,
    clean,
    withdrawal_ends,
    fetch
};
std::string name(Work work);  // "top-up"

/// Why it is done then.
enum class Reason {
    every_chore,   // somebody looks in at each
    runs_out,      // before hoppers or drinkers are empty for certain, or what is in them is too old
    too_small,     // the same, and the vessels do not last to the next chore
    water_is_due,  // the water is to be new
    course,        // of a supplement
    of_age,        // another feed, warmth or house from that age on
    hatching,      // chicks come
    birds_come,    // to houses that are to be ready
    birds_left,    // houses that are empty
    planned,       // birds are sold or moved as the farm file says
    last_day,      // and the rest of them go
    withdrawal,    // of a medicine is over
    needed         // from the store within days
};
std::string name(Reason reason);  // "runs-out"

/// One thing that somebody does at one chore for one hatch, or for the store.
struct Task {
    Moment at;  // a chore
    Work work;
    Reason why;
    std::string hatch{};                   // empty: of the store
    std::string house{};                   // its sort; empty: none is named
    int houses = 1;                        // so many of it
    std::vector<int> numbers{};            // theirs, where each has its own
    std::string vessel{};                  // hopper or drinker, its key
    int vessels = 0;                       // in all houses
    std::string what{};                    // key of the feed, the supplement or what is bought
    std::string title{};                   // of what is bought, or of what birds or eggs waited for
    std::optional<Mass> feed{};            // put into all the vessels together, or fetched
    std::optional<Volume> water{};         // put into all the vessels together, or stirred
    std::optional<Heads> birds{};          // of all its houses
    std::optional<int> packs{};            // bags or packs fetched
    double share_of_full = 1;              // to which a vessel is filled
    std::optional<Mass> feed_left{};       // in all vessels when it is done, as far as birds reach it
    std::optional<Volume> water_left{};    // the same
    std::optional<Dose> dose{};            // of a batch
    std::vector<std::string> line{};       // hatches that drink what the proportioner takes from the tank mixed
    std::optional<Volume> each{};          // of it, or of fresh water, into each drinker
    std::optional<BroodingRow> warmth{};   // air at chick height
    std::optional<Moment> until{};         // when somebody is there next for it, or what it was done for ends
    std::optional<Duration> withdrawal{};  // that is over
    bool of_eggs = false;                  // that one is of eggs
    bool overdue = false;                  // `at` has been, and it is still to be done
    int would_do = 0;                      // vessels that would last until the next chore; 0: these do
    std::string id{};                      // of its own, and the same when the plan is made again
};

/// Something to bring home.
struct Fetch {
    Moment on;  // a day, at 00:00
    std::string what;
    std::string title;
    std::optional<int> packs;
    std::optional<Mass> feed;
    Moment needed;
};
/// Trips as `plan_trips` has them where the farm states a store whose trips can be planned; else what there is to buy,
/// each the day before it is needed, on no day before `earliest`'s.
std::vector<Fetch> fetches(Plan const& plan, Moment earliest);

/// Every task from a moment until another, in order of time and then as one goes through the barn; routine is left out
/// from `routine_until` on.
std::vector<Task> agenda(Plan const& plan, Rations const& rations, std::vector<Fetch> const& fetches, Moment from,
                         Moment until, std::optional<Moment> routine_until = {});

/// A plan, and what is to be done by it between two moments.
struct Agenda {
    Plan plan;
    Moment from;
    Moment until;
    std::vector<Task> tasks;
};
/// What a window asks for; without a start from now on, or from the very beginning.
Agenda make_agenda(Season const& season, Window const& window, Progress const& progress = {});

/// The last chore no later than a moment.
Moment last_chore(domain::Farm const& farm, Moment at);

/// Whether it is done as a matter of course, at any chore.
bool is_routine(Work work);

}  // namespace cropful::engine
