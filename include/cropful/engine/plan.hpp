#pragma once

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/band.hpp"
#include "cropful/engine/check.hpp"
#include "cropful/engine/learn.hpp"
#include "cropful/engine/lifetime.hpp"
#include "cropful/engine/mix.hpp"
#include "cropful/engine/progress.hpp"
#include "cropful/engine/rations.hpp"
#include "cropful/engine/readying.hpp"
#include "cropful/engine/season.hpp"
#include "cropful/engine/stock.hpp"
#include "cropful/engine/water.hpp"

namespace cropful::engine {

using domain::Assumption;
using domain::Caution;
using domain::Moment;

/// One feed over one stretch of ages of one hatch.
struct FeedNeed {
    std::string feed;
    Duration from;
    Duration to;
    Mass amount;
    Band<Mass> band;
    int bags = 0;  // for `amount`: still to buy once earlier hatches' bags and the stock on hand are used; 0 without a
                   // bag size
    std::optional<Money> cost;
    std::chrono::sys_days first_day{};  // the calendar day of `from`
    std::vector<Mass> daily{};  // taken from the store on each calendar day from it on: put into hoppers for the farm's
                                // hungry flock, or eaten by it where no hopper is named
};

/// What one vessel does from one fill to the next. What is put in is what a hungry flock needs: of feed, the same that
/// is bought for it.
template <class Amount>
struct Fill {
    Moment at;     // a chore, but where feed, house or water change at an hour that is none
    Moment do_at;  // the last chore no later
    Duration age;  // at `at`
    Heads birds;
    Amount content;                        // usable, in one vessel once it is filled
    Amount brim;                           // and when it is full
    Amount put_in;                         // into all vessels together, what stays behind included
    double share_of_full = 1;              // of one vessel, what stays behind included
    Moment until;                          // when somebody is there next, or what it was put in for ends
    Amount used;                           // usually, from one vessel until then
    std::optional<Duration> empty_after;   // absent: never, no birds are left
    Band<std::optional<Duration>> lasts;   // p05 is the safe end: 19 times in 20 it is not empty sooner
    std::optional<Duration> change_after;  // drinkers: until the water or what is mixed into it is due
    bool fresh = true;                     // what is left is thrown out before it
    int would_do = 0;                      // vessels that would last until somebody is there next; 0: these do
    std::optional<Moment> due{};           // the chore it was due at, where that has been and no diary says it was done
};

/// All the vessels of one sort that serve a hatch.
template <class Amount>
struct Vessels {
    std::string key;
    int count = 1;
    std::vector<Fill<Amount>> fills;
};

/// A week of the flock's life, for the table a grower reads.
struct Week {
    int number;     // 1 for the first week of life
    Duration from;  // age
    Heads birds;
    Mass feed;  // the whole flock on the first day of the row
    Volume water;
};

/// A stage of a hatch's life, as far as it is planned for.
struct StagePlan {
    Duration from;
    Duration to;
    std::optional<std::string> house;  // its sort
    int houses = 1;
    std::vector<int> numbers{};  // of the houses it gets; fewer, or none, where there are too few
    std::optional<Vessels<Mass>> hoppers{};
    std::optional<Vessels<Volume>> drinkers{};
};

/// What becomes of one feed of a hatch, on the farm's hungry path.
struct FeedAccount {
    Mass put_in;        // into hoppers, or eaten where no hopper is named
    Mass stays_behind;  // in hoppers, out of reach
    Mass held;          // in hoppers when the plan begins, and eaten first
    Mass taken;         // from the store between its count and the start of the plan
};

struct HatchPlan {
    domain::Hatch hatch;
    std::string kind_title;
    Heads chicks;
    std::vector<FeedNeed> feeds;
    std::vector<Check> checks;
    std::vector<Week> weeks;
    std::vector<Day> days{};
    Lifetime lifetime{};
    std::vector<StagePlan> stages{};
    std::vector<Mix> mixes{};  // all courses, in order of age
    std::map<std::string, FeedAccount> account{};
    bool out_of_date = false;  // the diary has been silent for longer than its vessels last for certain

    /// Of the stage that runs or comes next; null where it has none.
    [[nodiscard]] Vessels<Mass> const* hoppers() const {
        return stages.empty() || !stages.front().hoppers ? nullptr : &*stages.front().hoppers;
    }
    [[nodiscard]] Vessels<Volume> const* drinkers() const {
        return stages.empty() || !stages.front().drinkers ? nullptr : &*stages.front().drinkers;
    }
    /// The course that runs or comes next; the last, where all are over; null without any.
    [[nodiscard]] Mix const* mix() const {
        for (Mix const& one : mixes) {
            if (!one.batches.empty()) return &one;
        }
        return mixes.empty() ? nullptr : &mixes.back();
    }
};

/// What to buy of one feed for the whole farm.
struct Purchase {
    std::string key;
    std::string title;
    Mass need;
    Band<Mass> band;  // of the need
    Mass on_hand;
    Mass spare;
    Mass put_in;        // into hoppers, or eaten where no hopper is named, by the hungry flock
    Mass stays_behind;  // in hoppers, where it is no use
    Mass in_hoppers;    // when the plan begins, and eaten first
    std::optional<Mass> bag;
    int bags = 0;  // for `need`
    std::optional<Money> cost;
    Band<int> safe_bags{};  // for each end of the band of the need; p95 is the safe one
    std::optional<Money> safe_cost;
    Moment first_needed;
    Moment last_needed;
    /// What must be bought to be sure, whatever the size of bags; none below 0.
    [[nodiscard]] Mass short_by() const { return std::max(Mass(), put_in + stays_behind + spare - on_hand); }
};

/// What to have of one supplement for the whole farm; by weight, by measure and in packs where each is known.
struct SupplementPurchase {
    std::string key;
    std::string title;
    std::optional<Mass> by_weight;  // what the batches take, each mixed for the safe end
    std::optional<Volume> by_volume;
    std::optional<int> packs;
    std::optional<Money> cost;
    Moment first_needed;
};

struct Plan {
    domain::Farm farm;
    std::vector<HatchPlan> hatches;
    std::vector<Purchase> feeds;
    std::vector<SupplementPurchase> supplements;
    Placement placement;  // of all hatches, whatever part of the time is planned for
    Readying readying;
    int bags = 0;       // of feed
    Money cost;         // of everything with a price
    int safe_bags = 0;  // the same for the safe end of every need
    Money safe_cost;
    bool cost_is_whole = true;  // false when something to buy has no price
    std::vector<Learned> learned;
    std::vector<Interval> alarms;
    std::vector<WaterFinding> water{};  // the worst first
    std::vector<SodiumSum> sodium{};    // of plain water and of every course, hatch by hatch; the worst first
    std::vector<StockLine> stocks{};    // of every supplement through a proportioner
    bool old_water = false;             // the laboratory's sample is more than a year old
    bool water_to_come = false;         // or of a day that has not come
    NeedScale need_scale = NeedScale::as_printed;
    std::vector<Assumption> assumptions;
    std::vector<Caution> cautions;
};

/// The age at which a hatch's feeding step ends: where the next begins, or its own end.
Duration fed_until(domain::Hatch const& hatch, std::size_t step);

/// The parts of a plan a question uses. What is left out is not worked out, so nothing wrong with it can stand in the
/// way.
struct Wanted {
    bool hoppers = true;  // fills
    bool drinkers = true;
    bool mixes = true;           // courses, and whether the water is fit
    bool as_of_farm = false;     // fills of some hatches as they are among all of the farm
    bool full_now = false;       // of vessels only the fill that starts the plan, to the brim
    bool shopping = true;        // bags, packs and what readies brooders
    bool amounts = true;         // of each feed; shopping needs them
    bool course = true;          // weeks, days and what the hatch is kept for
    Fits fits = Fits::left_out;  // dates on which a hatch without a brooder would have one
    bool notes = true;           // assumptions and cautions
    bool use = true;  // what birds eat and drink; without it only labels are judged, and nothing above is there
    Progress progress{};
};

/// The main job: what to buy, fill, stir in and watch. Throws NoAnswer where the data allow none.
Plan make_plan(Season const& season, Window window = {}, NeedScale scale = NeedScale::as_printed, Wanted wanted = {});
Plan make_plan(domain::Farm const& farm, Rations const& rations, Window window = {}, domain::Diary const& diary = {},
               NeedScale scale = NeedScale::as_printed, Wanted wanted = {});

}  // namespace cropful::engine
