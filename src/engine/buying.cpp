#include "cropful/engine/buying.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/buying_parts.hpp"
#include "engine/instant.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr std::size_t most_days = 3653;  // 10 years; a date further off is a slip

int days_between(std::chrono::sys_days from, std::chrono::sys_days to) { return static_cast<int>((to - from).count()); }

/// The first and the end of the days on which a plan's feed is eaten.
std::pair<std::chrono::sys_days, std::chrono::sys_days> first_and_last(Plan const& plan) {
    auto first = std::chrono::sys_days::max(), end = std::chrono::sys_days::min();
    for (HatchPlan const& hatch : plan.hatches) {
        for (FeedNeed const& part : hatch.feeds) {
            first = std::min(first, part.first_day);
            end = std::max(end, part.first_day + std::chrono::days(part.daily.size()));
        }
    }
    return {first, end};
}

FeedToBuy feed_to_buy(domain::Feed const& feed, std::size_t length) {
    FeedToBuy one{std::vector<Mass>(length, kilograms(0)), {}, {}, feed.on_hand};
    for (domain::Bag const& bag : domain::bags_of(feed)) {
        if (bag.price) one.bags.push_back({bag.size, *bag.price, bag.from});
    }
    if (one.bags.empty()) {
        throw NoAnswer(feed.title + ": when to buy it cannot be said without the size and price of its bags; " +
                       "state bag and price, lot and a price by weight, or bags");
    }
    if (feed.keeps) one.keeps = whole_number(std::floor(in_days(*feed.keeps + instant)));
    return one;
}

std::size_t number_of(TripPlan const& trips, std::string const& feed) {
    return static_cast<std::size_t>(std::find(trips.feeds.begin(), trips.feeds.end(), feed) - trips.feeds.begin());
}

void set_spare_aside(FeedToBuy& feed, Mass spare) {
    for (Mass& need : feed.needs) {
        if (!(need > kilograms(0))) continue;
        need += spare;
        return;
    }
}

/// Days on which one can go. Day 0 is one of them where feed would be missing without it.
std::vector<std::optional<Money>> trip_days(TripPlan const& trips, std::size_t length) {
    domain::Store const store = trips.plan.farm.store.value_or(domain::Store{});
    std::vector<std::optional<Money>> all(length);
    for (std::size_t i = 0; i < length; ++i) {
        std::chrono::weekday const day(std::chrono::sys_days(trips.date(static_cast<int>(i)).date()));
        bool const open =
            store.trips.empty() || std::find(store.trips.begin(), store.trips.end(), day) != store.trips.end();
        if (open) all[i] = store.trip;
    }
    auto const first = static_cast<std::size_t>(
        std::find_if(all.begin(), all.end(), [](auto const& day) { return day.has_value(); }) - all.begin());
    bool const short_before = std::any_of(trips.buying.feeds.begin(), trips.buying.feeds.end(), [&](auto const& feed) {
        std::size_t const lead = static_cast<std::size_t>(trips.buying.lead);
        return is_short(feed, first == length ? length : std::min(length, first + lead));
    });
    if (short_before) all[0] = store.trip;
    return all;
}

std::string why_not(TripPlan const& trips, Obstacle const& obstacle) {
    Buying const& buying = trips.buying;
    int const day = std::max(0, obstacle.day), length = static_cast<int>(buying.trips.size());
    int next = day + 1;
    while (next < length && !buying.trips[static_cast<std::size_t>(next)]) ++next;
    std::string const from = trips.date(day).day_year(),
                      title = trips.plan.farm.feeds.at(trips.feeds[obstacle.feed]).title;
    if (obstacle.why == Obstacle::Why::room) {
        std::string const until =
            next < length ? "the next one, " + trips.date(next).day_year() : std::string("the end");
        return "the store holds " + print(*buying.holds, trips.plan.farm.measures) +
               ", too little for the bags that must be there after a trip on " + from + " to last until " + until +
               "; most room is taken by " + title;
    }
    std::string const until = next < length
                                  ? "the next trip's may be fed on " + trips.date(next + buying.lead).day_year()
                                  : "the end, and there is no later trip";
    return title + ", which keeps " + print(days(*buying.feeds[obstacle.feed].keeps)) +
           ", would be too old if bought on " + from + ": it must last until " + until;
}

void add_packs(TripPlan& trips) {
    for (SupplementPurchase const& bought : trips.plan.supplements) {
        std::optional<std::size_t> trip;
        for (std::size_t i = 0; i < trips.shopping.trips.size(); ++i) {
            if (trips.date(trips.shopping.trips[i].day) <= bought.first_needed) trip = i;
        }
        trips.packs.push_back({bought.key, bought.first_needed, trip, bought.packs, bought.cost});
    }
}

}  // namespace

TripPlan plan_trips(Plan const& plan) {
    auto const [first, end] = first_and_last(plan);
    auto const length = static_cast<std::size_t>(days_between(first, end));
    if (length > most_days) {
        throw NoAnswer("from " + Moment(first).day_year() + " to " + Moment(end).day_year() + " are " +
                       number(static_cast<double>(length), 0) + " days, and trips are planned for at most " +
                       number(most_days, 0) + ": check the dates, or ask for a part with --from and --to");
    }
    domain::Store const store = plan.farm.store.value_or(domain::Store{});
    TripPlan trips{plan, Moment(first), {}, {}, {}, {}, {}, {}};
    trips.buying.keeping = store.keeping;
    trips.buying.holds = store.holds;
    trips.buying.lead = whole_number(in_days(store.lead));
    for (Purchase const& purchase : plan.feeds) {
        trips.feeds.push_back(purchase.key);
        trips.spare.push_back(purchase.spare);
        trips.buying.feeds.push_back(feed_to_buy(plan.farm.feeds.at(purchase.key), length));
    }
    auto const orders = orders_of(trips);
    for (Order const& order : orders) {
        for (Want const& want : order.wants) add_to(trips.buying.feeds[want.feed].needs, want);
    }
    for (std::size_t i = 0; i < trips.feeds.size(); ++i) set_spare_aside(trips.buying.feeds[i], trips.spare[i]);
    trips.buying.trips = trip_days(trips, length);
    auto const bought = least_cost(trips.buying);
    if (!bought.shopping) throw NoAnswer(why_not(trips, *bought.obstacle));
    trips.shopping = *bought.shopping;
    add_packs(trips);
    trips.against = other_ways(trips, orders);
    add_assumptions(trips);
    return trips;
}

std::vector<Order> orders_of(TripPlan const& trips) {
    std::vector<Order> all;
    for (HatchPlan const& hatch : trips.plan.hatches) {
        Order order;
        for (FeedNeed const& part : hatch.feeds) {
            int const from = days_between(trips.first.calendar_day(), part.first_day);
            order.day = order.wants.empty() ? from : std::min(order.day, from);
            order.wants.push_back({number_of(trips, part.feed), from, &part});
        }
        all.push_back(std::move(order));
    }
    return all;
}

}  // namespace cropful::engine
