// What the least costly shopping must keep, on random problems.
#include <catch2/catch.hpp>

#include <cmath>
#include <random>

#include "cropful/engine/trips.hpp"

using namespace cropful::engine;

namespace {

constexpr double slack = 1e-6;

Buying random_problem(unsigned seed) {
    std::mt19937 random(seed);
    auto const uniform = [&](double from, double to) {
        return std::uniform_real_distribution<double>(from, to)(random);
    };
    auto const chance = [&](double part) { return uniform(0, 1) < part; };
    Buying buying;
    std::size_t const length = 20 + seed % 15;
    for (std::size_t day = 0; day < length; ++day) {
        buying.trips.push_back(day % 3 == 0 || chance(0.3) ? std::optional(money(12)) : std::nullopt);
    }
    if (chance(0.5)) buying.keeping = money(uniform(0.01, 0.3)) / kilograms(1) / days(1);
    for (unsigned i = 0; i < 1 + seed % 2; ++i) {
        double const size = uniform(3, 12), price = size * uniform(0.5, 1.5);
        FeedToBuy feed{{}, {{kilograms(size), money(price), 1}}, {}, kilograms(chance(0.5) ? uniform(0, 6) : 0)};
        if (chance(0.4)) feed.bags.push_back({kilograms(size), money(price * uniform(0.6, 0.95)), 3});
        if (chance(0.7)) feed.keeps = static_cast<int>(uniform(7, 20));
        for (std::size_t day = 0; day < length; ++day) feed.needs.push_back(kilograms(uniform(0, 3)));
        buying.feeds.push_back(feed);
    }
    return buying;
}

/// The cost of the best shopping, which is shown to be the best.
double least(Buying const& buying) {
    auto const bought = least_cost(buying, 20'000);
    REQUIRE(bought.shopping);
    REQUIRE(bought.shopping->proven);
    return in_money(bought.shopping->cost());
}

/// Follows a shopping day by day; the oldest feed first.
void check_followed(Buying const& buying, Shopping const& shopping) {
    struct Lot {
        int bought;
        double kg;
    };
    std::vector<std::vector<Lot>> store(buying.feeds.size());
    double wasted = 0, told = 0;
    for (std::size_t i = 0; i < store.size(); ++i) store[i].push_back({0, in_kilograms(buying.feeds[i].on_hand)});
    for (int day = 0; day < static_cast<int>(buying.trips.size()); ++day) {
        double all = 0;
        for (std::size_t i = 0; i < store.size(); ++i) {
            std::erase_if(store[i], [&](Lot const& lot) {
                bool const old = buying.feeds[i].keeps && day > lot.bought + *buying.feeds[i].keeps - 1;
                if (old) wasted += lot.kg;
                return old;
            });
        }
        for (Trip const& trip : shopping.trips) {
            if (trip.day != day) continue;
            REQUIRE(buying.trips[static_cast<std::size_t>(day)]);
            for (FeedBought const& bought : trip.feeds)
                store[bought.feed].push_back({day, in_kilograms(bought.amount)});
            for (auto const& lots : store) {
                for (Lot const& lot : lots) all += lot.kg;
            }
            if (buying.holds) CHECK(all <= in_kilograms(*buying.holds) + slack);
        }
        for (std::size_t i = 0; i < store.size(); ++i) {
            double need = in_kilograms(buying.feeds[i].needs[static_cast<std::size_t>(day)]);
            for (Lot& lot : store[i]) {
                double const taken = std::min(need, lot.kg);
                lot.kg -= taken;
                need -= taken;
            }
            CHECK(need < slack);
        }
    }
    for (Waste const& waste : shopping.waste) told += in_kilograms(waste.amount);
    CHECK(std::abs(told - wasted) < slack);
}

}  // namespace

TEST_CASE("no bird goes without, and none is fed what is too old", "[laws]") {
    for (unsigned seed = 1; seed <= 60; ++seed) {
        CAPTURE(seed);
        auto const buying = random_problem(seed);
        auto const bought = least_cost(buying);
        REQUIRE(bought.shopping);
        check_followed(buying, *bought.shopping);
    }
}

TEST_CASE("feed that keeps longer never costs more where keeping is free", "[laws]") {
    // Where keeping costs something, feed thrown away no longer does, so that longer may cost more.
    for (unsigned seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        auto buying = random_problem(seed);
        buying.keeping = {};
        double last = -1;
        for (int const keeps : {30, 14, 10, 7}) {
            for (auto& feed : buying.feeds) feed.keeps = keeps;
            double const cost = least(buying);
            CHECK(cost >= last - slack);
            last = cost;
        }
    }
}

TEST_CASE("a dearer trip never lowers the cost, nor means more trips", "[laws]") {
    for (unsigned seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        auto buying = random_problem(seed);
        double last = 0;
        std::size_t trips = buying.trips.size();
        for (double const trip : {0.0, 3.0, 12.0, 50.0}) {
            for (auto& day : buying.trips) day = day ? std::optional(money(trip)) : std::nullopt;
            auto const bought = least_cost(buying, 20'000);
            REQUIRE(bought.shopping->proven);
            CHECK(in_money(bought.shopping->cost()) >= last - slack);
            CHECK(bought.shopping->trips.size() <= trips);
            last = in_money(bought.shopping->cost());
            trips = bought.shopping->trips.size();
        }
    }
}

TEST_CASE("a larger store never costs more", "[laws]") {
    for (unsigned seed = 1; seed <= 30; ++seed) {
        CAPTURE(seed);
        auto buying = random_problem(seed);
        double last = least(buying);
        for (double const holds : {90.0, 60.0, 45.0}) {
            buying.holds = kilograms(holds);
            auto const bought = least_cost(buying, 20'000);
            if (!bought.shopping) break;
            REQUIRE(bought.shopping->proven);
            check_followed(buying, *bought.shopping);
            CHECK(in_money(bought.shopping->cost()) >= last - slack);
            last = in_money(bought.shopping->cost());
        }
    }
}

TEST_CASE("where trips are free and keeping is not, one buys as late as possible", "[laws]") {
    for (unsigned seed = 1; seed <= 20; ++seed) {
        CAPTURE(seed);
        auto buying = random_problem(seed);
        buying.keeping = money(0.1) / kilograms(1) / days(1);
        for (auto& day : buying.trips) day = money(0);
        for (auto& feed : buying.feeds) {
            feed.bags.resize(1);
            feed.keeps.reset();
        }
        auto const bought = least_cost(buying);
        REQUIRE(bought.shopping->proven);
        std::vector<double> stock;
        for (auto const& feed : buying.feeds) stock.push_back(in_kilograms(feed.on_hand));
        for (int day = 0; day < static_cast<int>(buying.trips.size()); ++day) {
            std::vector<int> bags(stock.size(), 0);
            for (Trip const& trip : bought.shopping->trips) {
                if (trip.day != day) continue;
                for (FeedBought const& feed : trip.feeds) bags[feed.feed] = feed.bags[0].count;
            }
            for (std::size_t i = 0; i < stock.size(); ++i) {
                double const size = in_kilograms(buying.feeds[i].bags[0].size);
                double const need = in_kilograms(buying.feeds[i].needs[static_cast<std::size_t>(day)]);
                int const least = std::max(0, static_cast<int>(std::ceil((need - stock[i]) / size - 1e-9)));
                CHECK(bags[i] == least);
                stock[i] += bags[i] * size - need;
            }
        }
    }
}
