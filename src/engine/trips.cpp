#include "cropful/engine/trips.hpp"

#include <algorithm>

#include "cropful/fault.hpp"
#include "engine/trip_account.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double work_a_label = 20'000;  // ways to go on that all searches look at together: some seconds

std::vector<Eating> eating_of(Buying const& buying) {
    std::vector<Eating> eating;
    for (FeedToBuy const& feed : buying.feeds) eating.emplace_back(feed);
    return eating;
}

std::vector<Eating> wants_of(Buying const& buying, ShoppingErrand const& errand) {
    std::vector<Eating> wants;
    for (std::size_t i = 0; i < buying.feeds.size(); ++i) {
        FeedToBuy wanted = buying.feeds[i];
        wanted.needs = errand.wants[i];
        wants.emplace_back(wanted);
    }
    return wants;
}

/// Shopping by errands on its way through the days.
struct Errands {
    std::vector<Eating> const& eating;
    std::vector<BagTable> const& tables;
    TripBounds const& bounds;
    std::vector<Shelf> shelves;
    std::vector<Eating> wants;

    /// Whether what is there on a day lasts to before another.
    [[nodiscard]] bool lasts(int day, int end) const {
        for (std::size_t i = 0; i < eating.size(); ++i) {
            if (eating[i].missing(shelves[i], day, end) > 0) return false;
        }
        return true;
    }
    Load buy(int day) {
        Load load{day, std::vector<std::size_t>(eating.size(), 0)};
        for (std::size_t i = 0; i < wants.size(); ++i) {
            int const stale = std::min(eating[i].last(day), bounds.horizon() - 1) + 1;
            double const lacks = wants[i].missing(shelves[i], day, std::max(day, stale));
            if (lacks <= 0) continue;
            load.entries[i] = tables[i].cheapest(lacks);
            shelves[i].push_back({eating[i].last(day), tables[i].weight(load.entries[i])});
        }
        return load;
    }
    void wait(int day, int next) {
        double kept = 0;
        for (std::size_t i = 0; i < eating.size(); ++i) shelves[i] = eating[i].eat(shelves[i], day, next, kept);
    }
};

}  // namespace

Bought least_cost(Buying const& buying, std::size_t labels) {
    auto const eating = eating_of(buying);
    auto const tables = bag_tables(buying, eating);
    TripBounds const bounds(buying, eating);
    if (bounds.obstacle()) return {{}, bounds.obstacle()};
    TripSearch search(buying, eating, tables, bounds);
    // Quick searches first: what must cost more than their answers need not be followed.
    TripSearch::Found best;
    double work = work_a_label * static_cast<double>(labels);
    for (std::size_t const some : {std::size_t{0}, std::size_t{1}, labels / 10, labels}) {
        auto found = search.run(some, best.cost, work);
        work -= search.work();
        if (found.cost <= best.cost) {
            best = std::move(found);
        } else {
            best.proven = found.proven;
        }
    }
    if (best.cost == no_way && !best.proven) {
        throw NoAnswer("no way to shop was found among the many there are: plan for fewer days, or state fewer feeds");
    }
    if (best.cost == no_way) return {{}, search.obstacle()};
    Bought bought{account(buying, tables, best.loads), {}};
    bought.shopping->proven = best.proven;
    return bought;
}

std::optional<Shopping> run_errands(Buying const& buying, NextErrand const& next_errand) {
    auto const eating = eating_of(buying);
    auto const tables = bag_tables(buying, eating);
    TripBounds const bounds(buying, eating);
    Errands way{eating, tables, bounds, {}, {}};
    for (std::size_t i = 0; i < eating.size(); ++i) {
        double const on_hand = in_kilograms(buying.feeds[i].on_hand);
        way.shelves.push_back(on_hand > 0 ? Shelf{{eating[i].last(0), on_hand}} : Shelf{});
    }
    int const first = bounds.next(-1);
    if (!way.lasts(0, first == 0 ? 0 : bounds.cover(first))) return std::nullopt;
    way.wait(0, first);
    std::vector<Load> loads;
    auto errand = next_errand();
    for (int day = first; day < bounds.horizon(); day = bounds.next(day)) {
        int const next = bounds.next(day);
        bool const due = errand && errand->day <= day;
        for (; errand && errand->day <= day; errand = next_errand()) way.wants = wants_of(buying, *errand);
        if (due || !way.lasts(day, bounds.cover(next))) {
            Load load = way.buy(day);
            if (!way.lasts(day, bounds.cover(next))) return std::nullopt;
            bool const empty = std::all_of(load.entries.begin(), load.entries.end(), [](auto e) { return e == 0; });
            if (!empty) loads.push_back(std::move(load));
        }
        way.wait(day, next);
    }
    return account(buying, tables, loads);
}

}  // namespace cropful::engine
