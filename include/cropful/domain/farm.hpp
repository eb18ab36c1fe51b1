#pragma once

#include <array>
#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/blend.hpp"
#include "cropful/domain/brooder.hpp"
#include "cropful/domain/moment.hpp"
#include "cropful/domain/nutrient.hpp"
#include "cropful/domain/quantities.hpp"
#include "cropful/domain/water.hpp"
#include "cropful/quantities/text.hpp"

/// A farm as its owner wrote it. Fractions are 0 to 1. An empty optional was not stated; nothing is filled in here.
namespace cropful::domain {

/// The most birds or eggs of a hatch, and the longest a hatch is kept.
inline constexpr int most_birds = 1'000'000;
inline constexpr Duration longest_life = days(1826);  // 5 years

/// The most hatches of a farm, each of `times` counted; the most hoppers or drinkers of a hatch.
inline constexpr int most_hatches = 900;
inline constexpr int most_vessels = 1000;

enum class Form { mash, crumble, pellet };
std::string name(Form form);

/// A label's guarantee in the nutrient's own unit.
struct Guarantee {
    std::optional<double> minimum;
    std::optional<double> maximum;
};
/// The one level a label states of a nutrient: its minimum, but of fibre its maximum.
Guarantee guarantee_of(Nutrient const& nutrient, double stated);

struct Medication {
    std::string drug;
    std::optional<Mass> per_short_ton;
    Duration withdrawal;
    std::optional<Duration> eggs_withdrawal{};  // how long after it no egg is eaten
};

/// A size of bag one can buy, and its price where at least `from` of that size are bought at once (all of them at it).
struct Bag {
    Mass size;
    std::optional<Money> price;
    int from = 1;
};

struct Feed {
    std::string key;
    std::string title;
    std::optional<EnergyPerMass> energy;
    std::optional<Form> form;
    std::optional<MassPerVolume> density;
    std::optional<Mass> bag;
    std::optional<Money> price;               // per bag
    bool in_lots = false;                     // `bag` is a lot: loose feed, sold by so much at a time
    std::optional<MoneyPerMass> by_weight{};  // what it costs where it is sold neither in bags nor in lots
    std::vector<Bag> bags;  // all that are sold; empty: only `bag`, else `bag` is the first of them sold singly
    Mass on_hand = kilograms(0);
    std::optional<Moment> counted{};  // when that stood in the store; absent: now
    Mass spare = kilograms(0);        // kept in hand beyond the need
    std::optional<Duration> keeps;
    std::map<std::string, Guarantee>
        label;  // nutrient key -> guarantee; of energy, which sets how much is eaten, above
    std::optional<Medication> medicated;
};

/// Every size and price of a feed's bags, the one of `bag` and `price` where `bags` says none; empty without a size.
std::vector<Bag> bags_of(Feed const& feed);

/// What a weight of it costs, in bags, lots or loose; empty without a price.
std::optional<MoneyPerMass> price_by_weight(Feed const& feed);

/// Where feed is kept, and what it takes to buy some.
struct Store {
    Money trip = money(0);                    // what one trip to buy costs, whatever is brought home
    std::optional<Mass> holds;                // the most feed of all sorts together
    Duration lead = days(0);                  // whole days feed must be there before it is fed
    MoneyPerMassDay keeping{};                // what keeping feed costs
    std::vector<std::chrono::weekday> trips;  // days of the week on which one can buy; empty: all
};

struct Hopper {
    std::string key;
    Volume volume;
    double stays_behind = 0;
    double fill = 1;
    double extra_waste = 0;
    std::optional<Duration> fill_for{};  // put in what is needed for so long, not to the brim
    std::optional<Duration> at_most{};   // how long feed stays wholesome in it; absent: 7 d, or 14 d from 3 wk of age
};

struct Drinker {
    std::string key;
    Volume volume;
    Volume displaced = litres(0);
    std::optional<Duration> change_every;
    double spill = 0;
    Volume least = litres(0);  // what its trough needs before birds can drink
    bool plumbed = false;      // a line that never empties and is never filled
};

struct Stock {
    std::optional<Rate> strength{};  // product in the finished stock; absent: what gives the rate
    Proportioner proportioner;
    std::optional<Volume> tank{};     // what its tank holds
    std::optional<Duration> keeps{};  // how long it keeps; absent: as the solution
};

struct Supplement {
    std::string key;
    std::string title;
    std::string drug{};                         // what it is a medicine with; may be empty
    std::optional<Duration> withdrawal{};       // how long after the course no bird is eaten
    std::optional<Duration> eggs_withdrawal{};  // and no egg
    std::optional<Rate> rate;                   // at least one of rate and stock is given
    std::optional<MassPerVolume> spoon;
    std::optional<Duration> keeps;
    Duration from = days(0);
    int days_long = 1;             // 0: the hatches' courses say it
    std::optional<double> sodium;  // fraction of the product
    std::optional<Mass> pack;
    std::optional<Volume> pack_volume;
    std::optional<Money> price;
    std::optional<Stock> stock;
    bool fills_drinkers = false;  // a batch is what the drinkers hold, not what will be drunk
};

/// Product in what is drunk: by the stock where its strength is stated, else by the label's rate.
Rate drunk_rate(Supplement const& supplement);
/// Product in its stock, which it must have.
Rate stock_rate(Supplement const& supplement);
/// Whether a litre of its stock, if it has any, holds at most 1 kg or 1 L of product.
bool can_be_stock(Supplement const& supplement);

struct FeedingStep {
    std::string feed;
    Duration from;
};
/// Where a hatch lives from an age on. Counts are of each house, or in all where no house is named.
struct Stage {
    Duration from;
    std::optional<std::string> house{};  // its sort, a key of `brooders`
    std::optional<int> houses{};         // how many of it; absent: as many as hold the birds
    std::optional<std::string> hopper{};
    int hoppers = 1;
    std::optional<std::string> drinker{};
    int drinkers = 1;
};
/// A supplement given for whole days from an age on.
struct Course {
    std::string supplement;
    Duration from;
    int days_long = 1;
};
struct Removal {
    Duration at;
    Heads birds;
};

/// What a diary says of the head count.
struct HeadRecord {
    enum class What { counted, died, moved };
    Duration at;
    What what;
    Heads birds;  // alive then; dead since the last record; gone (joined when negative)
};

struct Hatch {
    std::string name;
    std::string kind;  // canonical, as the file in rations/birds is named
    Moment date;
    std::optional<Heads> chicks;  // or eggs
    std::optional<double> eggs;
    std::optional<double> hatch_rate;  // absent with eggs: the kind's
    Duration first_age = days(0);      // age at which the birds are counted: 0 but for questions about older birds
    std::vector<FeedingStep> feeding;  // in order of age
    Duration until;
    std::vector<Removal> removed;     // in order of age
    std::vector<HeadRecord> heads{};  // from the diary, in order of age
    std::optional<Duration> laying_from;
    std::optional<std::string> hopper;
    int hoppers = 1;
    std::optional<std::string> drinker;
    int drinkers = 1;
    std::optional<std::string> supplement;
    std::optional<std::string> brooder{};
    std::optional<double> lays{};   // eggs per bird alive and day, never without laying_from
    std::string series{};           // of a hatch that comes again: its name without its number
    std::vector<Stage> housing{};   // in order of age; empty: one for life, of the brooder and vessels above
    std::vector<Course> courses{};  // in order of age, beside the one of `supplement`
    std::optional<Moment> set{};    // when its eggs were, where the date follows from that
    Duration earliest = days(0);    // how long before its date it may hatch
};

/// Where a hatch lives, in order of age: at least one, the first from its first age on.
std::vector<Stage> stages_of(Hatch const& hatch);
/// The one at an age; the first before it.
Stage stage_at(Hatch const& hatch, Duration age);
/// Whether one is named at any age.
bool has_hopper(Hatch const& hatch);
bool has_drinker(Hatch const& hatch);
bool has_course(Hatch const& hatch);

/// The start of a hatch's first day, and the end of its last: what is seen and done between belongs to it.
Moment first_moment(Hatch const& hatch);
Moment last_moment(Hatch const& hatch);
/// Whether a moment lies between the day of hatch and that.
bool is_kept(Hatch const& hatch, Moment at);

/// When somebody is in the barn, where the farm does not say: hours of the day.
inline constexpr std::array<Duration, 2> usual_chores{days(7 / 24.0), days(18 / 24.0)};

struct Farm {
    std::string name;
    Measures measures = Measures::us;
    std::string currency = "USD";
    std::optional<Temperature> warmth;
    std::vector<Duration> chores{};      // hours of the day, rising; empty: `usual_chores`
    Mass scale_step = kilograms(0.001);  // what its scale tells apart
    std::optional<Store> store;
    std::optional<WaterReport> water{};
    std::map<std::string, Feed> feeds;
    std::map<std::string, Hopper> hoppers;
    std::map<std::string, Drinker> drinkers;
    std::map<std::string, Supplement> supplements;
    std::map<std::string, Brooder> brooders;
    std::map<std::string, Disinfectant> disinfectants;
    std::vector<Ingredient> ingredients;  // in the order of the file
    std::vector<Blend> blends;
    std::vector<Hatch> hatches;  // in order of date
};

/// A time a hatch spends in houses of one sort.
struct Residence {
    std::string house;
    Duration from;
    Duration to;
};
/// All of them, in order of age: its stages, or its brooder until it is left.
std::vector<Residence> residences_of(Hatch const& hatch, Farm const& farm);

/// Every course of a hatch, in order of age.
std::vector<Course> courses_of(Hatch const& hatch, Farm const& farm);
/// Hours of the day at which somebody is in the barn, rising; never none.
std::vector<Duration> chores_of(Farm const& farm);
/// A date without an hour is the first chore of its day.
Moment at_first_chore(Moment date, Farm const& farm);

}  // namespace cropful::domain
