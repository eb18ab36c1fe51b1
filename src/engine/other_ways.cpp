#include <algorithm>

#include "engine/buying_parts.hpp"
#include "engine/shelf.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// The last day with a trip on or before a day, else the first there is.
int trip_before(Buying const& buying, int day) {
    int trip = std::max(day, 0);
    while (trip > 0 && !buying.trips[at(trip)]) --trip;
    while (!buying.trips[at(trip)]) ++trip;
    return trip;
}

/// A trip for each hatch, for all that it and those before it still want.
NextErrand by_hatches(TripPlan const& trips, std::vector<Order> orders) {
    Buying const& buying = trips.buying;
    for (Order& order : orders) order.day = trip_before(buying, order.day - buying.lead);
    std::stable_sort(orders.begin(), orders.end(), [](Order const& a, Order const& b) { return a.day < b.day; });
    std::vector<std::vector<Mass>> wants(trips.feeds.size(), std::vector<Mass>(buying.trips.size(), kilograms(0)));
    return [&trips, orders = std::move(orders), wants = std::move(wants),
            next = std::size_t{0}]() mutable -> std::optional<ShoppingErrand> {
        if (next == orders.size()) return std::nullopt;
        Order const& order = orders[next++];
        for (Want const& want : order.wants) {
            auto& days = wants[want.feed];
            bool const is_new = std::all_of(days.begin(), days.end(), [](Mass m) { return m == kilograms(0); });
            add_to(days, want);
            auto const first = std::find_if(days.begin(), days.end(), [](Mass m) { return m > kilograms(0); });
            if (is_new && first != days.end()) *first += trips.spare[want.feed];
        }
        return ShoppingErrand{order.day, wants};
    };
}

/// A trip on the first day and on the first of each month, for what is fed till the next.
NextErrand by_months(TripPlan const& trips) {
    Buying const& buying = trips.buying;
    std::vector<int> starts{trip_before(buying, 0)};
    for (int day = 1; at(day) < buying.trips.size(); ++day) {
        if (trips.date(day).date().day() != std::chrono::day(1)) continue;
        int const trip = trip_before(buying, day);
        if (trip > starts.back()) starts.push_back(trip);
    }
    return [&buying, starts = std::move(starts), next = std::size_t{0}]() mutable -> std::optional<ShoppingErrand> {
        if (next == starts.size()) return std::nullopt;
        ShoppingErrand errand{starts[next++], {}};
        std::size_t const length = buying.trips.size();
        std::size_t const end = next == starts.size() ? length : std::min(length, at(starts[next] + buying.lead));
        for (FeedToBuy const& feed : buying.feeds) {
            errand.wants.push_back(feed.needs);
            std::fill(errand.wants.back().begin() + static_cast<std::ptrdiff_t>(end), errand.wants.back().end(),
                      kilograms(0));
        }
        return errand;
    };
}

}  // namespace

void add_to(std::vector<Mass>& days, Want const& want) {
    auto const& daily = want.need->daily;
    auto const from = days.begin() + want.from;
    std::transform(daily.begin(), daily.end(), from, from, std::plus<>());
}

bool is_short(FeedToBuy const& feed, std::size_t end) {
    Eating const eating(feed);
    return eating.missing({{eating.last(0), in_kilograms(feed.on_hand)}}, 0, static_cast<int>(end)) > 0;
}

std::vector<OtherWay> other_ways(TripPlan const& trips, std::vector<Order> const& orders) {
    auto const& days = trips.buying.trips;
    bool const can_go = std::any_of(days.begin(), days.end(), [](auto const& day) { return day.has_value(); });
    std::vector<OtherWay> all;
    if (!can_go) return all;
    auto const add = [&](std::string const& policy, NextErrand const& errands) {
        auto const shopping = run_errands(trips.buying, errands);
        if (shopping) all.push_back({policy, shopping->cost(), static_cast<int>(shopping->trips.size())});
    };
    add("each hatch", by_hatches(trips, orders));
    add("monthly", by_months(trips));
    return all;
}

}  // namespace cropful::engine
