#include "cropful/reports/trips_page.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/buy_page.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/mix_page.hpp"
#include "cropful/reports/words.hpp"
#include "reports/shopping.hpp"

namespace cropful::reports {

namespace {

using engine::FeedBought;
using engine::Trip;
using engine::TripPlan;
using quantities::Money;
using quantities::print;

std::string column_title(TripPlan const& trips, std::size_t feed) {
    return feed_title(trips.plan.farm, trips.feeds[feed]);
}

std::string money_words(Money cost, TripPlan const& trips) { return print(cost, trips.plan.farm.currency); }

Money cost_of(Trip const& trip) {
    Money sum = trip.cost;
    for (FeedBought const& feed : trip.feeds) sum += feed.cost;
    return sum;
}

/// "2 packs"; the amount where packs cannot be counted.
std::string packs_count(engine::PacksBought const& packs, TripPlan const& trips) {
    auto const all = engine::shopping_list(trips.plan);
    auto const one = std::find_if(all.begin(), all.end(), [&](engine::ShoppingItem const& item) {
        return item.sort == engine::ShoppingItem::Sort::supplement && item.key == packs.supplement;
    });
    return count_words(*one, trips.plan.farm);
}

std::string packs_words(engine::PacksBought const& packs, TripPlan const& trips) {
    return packs_count(packs, trips) + " of " + supplement_title(trips.plan.farm.supplements.at(packs.supplement));
}

Page next_trip_part(TripPlan const& trips) {
    auto const& all = trips.shopping.trips;
    Page before;  // what no trip brings in time
    for (engine::PacksBought const& packs : trips.packs) {
        if (packs.trip) continue;
        before +=
            wrap(packs_words(packs, trips) + " must be there by " + packs.by.day() + ", before any trip", "  ", "    ");
    }
    if (all.empty()) return spaced(heading("NEXT TRIP", ": none; enough feed is on hand")) + before;
    Trip const& trip = all.front();
    Table table({Align::right, Align::right, Align::left}, 2);
    for (FeedBought const& feed : trip.feeds) {
        for (engine::BagsBought const& bags : feed.bags) {
            domain::Feed const& its = trips.plan.farm.feeds.at(trips.feeds[feed.feed]);
            table.add({plural(bags.count, bag_noun(its)), money_words(bags.cost, trips),
                       column_title(trips, feed.feed) + ", " + print(bags.size, trips.plan.farm.measures)});
        }
    }
    for (engine::PacksBought const& packs : trips.packs) {
        if (packs.trip != std::size_t{0}) continue;
        table.add({packs_count(packs, trips), packs.cost ? money_words(*packs.cost, trips) : "no price",
                   supplement_title(trips.plan.farm.supplements.at(packs.supplement))});
    }
    return spaced(heading("NEXT TRIP", ": " + trips.date(trip.day).day_year()) + table + before);
}

/// "4 x 50 lb and 1 x 25 lb Quail starter"
std::string bought_words(FeedBought const& feed, TripPlan const& trips) {
    std::vector<std::string> sizes;
    for (engine::BagsBought const& bags : feed.bags) {
        sizes.push_back(std::to_string(bags.count) + " x " + print(bags.size, trips.plan.farm.measures));
    }
    return join(sizes, " and ") + " " + column_title(trips, feed.feed);
}

std::string trip_words(std::size_t number, TripPlan const& trips) {
    std::vector<std::string> parts;
    for (FeedBought const& feed : trips.shopping.trips[number].feeds) parts.push_back(bought_words(feed, trips));
    for (engine::PacksBought const& packs : trips.packs) {
        if (packs.trip == number) parts.push_back(packs_words(packs, trips));
    }
    return join(parts, "; ");
}

Page all_trips_part(TripPlan const& trips) {
    auto const& all = trips.shopping.trips;
    if (all.empty()) return {};
    Table table({Align::left, Align::right, Align::left}, 2);
    table.head({"trip", "cost", "bring"});
    for (std::size_t i = 0; i < all.size(); ++i) {
        table.add({trips.date(all[i].day).day(), money_words(cost_of(all[i]), trips), trip_words(i, trips)});
    }
    return spaced(heading("ALL TRIPS", " (cost of the trip and its bags)") + table);
}

/// Bedding and disinfectant.
Page beside_feed_part(TripPlan const& trips) {
    Table const table = shopping_table(engine::shopping_list(trips.plan.readying), trips.plan.farm);
    if (table.empty()) return {};
    return spaced(heading("BESIDE FEED", ", from a trip before its day (not in the costs below)") + table);
}

std::string costs_words(TripPlan const& trips) {
    auto const& shopping = trips.shopping;
    std::string words = money_words(shopping.cost(), trips) + " in all: " + money_words(shopping.bag_cost, trips) +
                        " for bags, " + money_words(shopping.trip_cost, trips) + " for " +
                        plural(static_cast<int>(shopping.trips.size()), "trip");
    if (shopping.keeping_cost > quantities::money(0)) {
        words += ", " + money_words(shopping.keeping_cost, trips) + " for keeping feed";
    }
    bool const packs = !trips.packs.empty();
    if (packs) words += "; supplements are not counted";
    return words + (shopping.proven ? ". No other trips cost less."
                                    : ". Not shown to be the cheapest: there are too many ways to try all of them.");
}

std::string other_way_words(engine::OtherWay const& other, TripPlan const& trips) {
    std::string const way = other.policy == "monthly" ? "Buying on the first day and then on the first of each month"
                                                      : "Buying for each hatch when it comes";
    Money const more = other.cost - trips.shopping.cost();
    std::string words = way + " would cost " + money_words(other.cost, trips) + " with " + plural(other.trips, "trip");
    double const cents = std::round(100 * quantities::in_money(more));
    if (cents == 0) return words + ": the same.";
    Money const difference = more > quantities::money(0) ? more : -more;
    words += ": " + money_words(difference, trips);
    if (other.cost > quantities::money(0)) {
        words += " (" + quantities::number(100 * quantities::ratio(difference / other.cost), 1) + " %)";
    }
    return words + (cents > 0 ? " is saved." : " less, but the store may not hold it.");
}

Page waste_part(TripPlan const& trips) {
    auto const measures = trips.plan.farm.measures;
    Page page;
    for (engine::Waste const& waste : trips.shopping.waste) {
        page += wrap(trips.date(waste.day).day() + ": " + print(waste.amount, measures) + " of " +
                         column_title(trips, waste.feed) + " is too old and thrown away (" +
                         money_words(waste.cost, trips) + ")",
                     "  ", "    ");
    }
    std::vector<std::string> left;
    for (std::size_t i = 0; i < trips.feeds.size(); ++i) {
        if (trips.shopping.left[i] < quantities::kilograms(0.05)) continue;
        left.push_back(print(trips.shopping.left[i], measures) + " of " + column_title(trips, i));
    }
    if (page.empty()) page = wrap("nothing grows too old", "  ", "    ");
    if (!left.empty()) page += wrap("left at the end, if birds eat that much: " + join(left), "  ", "    ");
    return spaced(heading("WASTE") + page);
}

}  // namespace

Page trips_page(TripPlan const& trips, Sources sources) {
    Page const learned = learned_part(trips.plan.learned, trips.plan.farm.measures);
    Page page = page_title(trips.plan) + next_trip_part(trips) + all_trips_part(trips) + beside_feed_part(trips) +
                spaced(heading("COST")) + wrap(costs_words(trips), "  ", "    ");
    for (engine::OtherWay const& other : trips.against) page += wrap(other_way_words(other, trips), "  ", "    ");
    return page + waste_part(trips) + spaced(learned) + notes_part(trips.plan, sources);
}

}  // namespace cropful::reports
