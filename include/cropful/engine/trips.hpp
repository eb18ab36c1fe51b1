#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include "cropful/engine/quantities.hpp"
#include "cropful/quantities/make.hpp"

/// When to buy what: days are counted from 0, feeds as they stand in the problem.
namespace cropful::engine {

/// A size of bag and what one costs where at least `from` of that size are bought at once. A price for more bags is no
/// dearer than one for fewer.
struct BagOffer {
    Mass size;
    Money price;
    int from = 1;
};

struct FeedToBuy {
    std::vector<Mass> needs;  // of each day
    std::vector<BagOffer> bags;
    std::optional<int> keeps;  // bought on day b it may be fed on days b to b + keeps - 1; absent: for ever
    Mass on_hand;              // as if bought on day 0
};

/// In the morning what is too old is thrown away, then there may be a trip; the day's need is fed, the oldest first;
/// what is left at the day's end costs keeping. Where keeping or room counts, nobody buys ahead feed that would grow
/// too old: a purchase of which some would is made only where no lighter one lasts to the next trip, or all that do
/// cost more.
struct Buying {
    std::vector<FeedToBuy> feeds;
    std::vector<std::optional<Money>> trips;  // of each day; none where one cannot go
    MoneyPerMassDay keeping{};
    std::optional<Mass> holds;  // the most feed of all sorts right after a trip
    int lead = 0;               // days feed must be there before it is fed, but for what is bought on day 0
};

struct BagsBought {
    Mass size;
    int count;
    Money cost;
};
struct FeedBought {
    std::size_t feed;
    std::vector<BagsBought> bags;
    Mass amount;
    Money cost;
};
struct Trip {
    int day;
    Money cost;  // of the trip alone
    std::vector<FeedBought> feeds;
};

/// Feed thrown away in the morning of a day.
struct Waste {
    std::size_t feed;
    int day;
    Mass amount;
    Money cost;  // what was paid for it; for what was on hand, the first bag's price by weight
};

struct Shopping {
    std::vector<Trip> trips;
    std::vector<Waste> waste;
    std::vector<Mass> left;  // of each feed after the last day
    Money trip_cost;
    Money bag_cost;
    Money keeping_cost;
    bool proven = true;  // no other shopping costs less; false where the search had to be cut short
    [[nodiscard]] Money cost() const { return trip_cost + bag_cost + keeping_cost; }
};

/// Why no trips can feed every day.
struct Obstacle {
    enum class Why { stale, room } why;
    int day;           // of the last trip that can be reached; -1 for none
    std::size_t feed;  // that is stale before the next trip's comes into use, or has no room
};

/// How many ways to stand on one day the search keeps.
inline constexpr std::size_t usual_labels = 200;

/// The least costly shopping that feeds every day; of two that cost the same, the one with fewer trips.
struct Bought {
    std::optional<Shopping> shopping;
    std::optional<Obstacle> obstacle;  // where there is none
};
/// Throws NoAnswer where bags can be put together in more than a million ways, and where so many ways lead through the
/// days that none was found to the end.
Bought least_cost(Buying const& buying, std::size_t labels = usual_labels);

/// A planned trip of another way to shop.
struct ShoppingErrand {
    int day;
    std::vector<std::vector<Mass>> wants;  // of each feed on each day, those of earlier errands included
};
/// Gives one errand after another, none after the last: each is as large as the whole problem.
using NextErrand = std::function<std::optional<ShoppingErrand>()>;
/// Shopping by errands, in order of day, each on a day with a trip. It buys in the cheapest bags what is wanted, less
/// what is there and will be eaten in time, and nothing that would be too old before it is eaten; where feed would be
/// missing before the next chance, there is a trip more for what is wanted then. Room is not looked at. Empty where
/// feed would be missing all the same.
std::optional<Shopping> run_errands(Buying const& buying, NextErrand const& next_errand);

}  // namespace cropful::engine
