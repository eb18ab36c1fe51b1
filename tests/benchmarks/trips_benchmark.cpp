// How long it takes to find when to buy what: 6 feeds eaten every day for 1 to 5 years, a trip on any day. Figures are
// invented, from a fixed sequence. One question is of feeds that keep 8 to 12 weeks, the other of a store with a
// keeping cost and feeds that keep for ever. 0.2 s is the most that 5 years may take; `proven` is 1 where nothing was
// cut off.
#include <benchmark/benchmark.h>

#include <cmath>
#include <random>

#include "cropful/engine/trips.hpp"

using namespace cropful::engine;

namespace {

constexpr std::size_t feeds = 6;
constexpr int year = 365;

enum class Trips { two_a_week, any_day };

Buying season(std::int64_t length, Trips trips = Trips::two_a_week) {
    std::minstd_rand random(1);
    auto const between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(random() % 10007) / 10006;
    };
    Buying buying;
    for (std::int64_t day = 0; day < length; ++day) {
        bool const goes = trips == Trips::any_day || day % 7 == 0 || day % 7 == 3;
        buying.trips.push_back(goes ? std::optional(money(18)) : std::nullopt);
    }
    for (std::size_t i = 0; i < feeds; ++i) {
        FeedToBuy feed{{}, {{kilograms(22.68), money(between(20, 30)), 1}}, {}, kilograms(between(0, 30))};
        double const usual = between(1, 6), phase = between(0, 6);
        for (std::int64_t day = 0; day < length; ++day) {
            double const wave = 1 + 0.5 * std::sin(phase + 6.283 * static_cast<double>(day) / year);
            feed.needs.push_back(kilograms(usual * wave * between(0.9, 1.1)));
        }
        buying.feeds.push_back(std::move(feed));
    }
    return buying;
}

void measure(benchmark::State& state, Buying const& buying) {
    bool proven = true;
    for (auto _ : state) {
        auto answer = least_cost(buying);
        proven = proven && answer.shopping && answer.shopping->proven;
        benchmark::DoNotOptimize(answer);
    }
    state.counters["proven"] = proven ? 1 : 0;
    state.SetComplexityN(state.range(0));
}

void with_keeps(benchmark::State& state) {
    Buying buying = season(state.range(0));
    for (std::size_t i = 0; i < feeds; ++i) buying.feeds[i].keeps = 56 + 5 * static_cast<int>(i);
    measure(state, buying);
}

void any_day(benchmark::State& state) {
    Buying buying = season(state.range(0), Trips::any_day);
    for (std::size_t i = 0; i < feeds; ++i) buying.feeds[i].keeps = 56 + 5 * static_cast<int>(i);
    measure(state, buying);
}

void with_keeping(benchmark::State& state) {
    Buying buying = season(state.range(0));
    buying.keeping = money(0.10) / kilograms(22.68) / days(7);
    measure(state, buying);
}

BENCHMARK(with_keeps)->DenseRange(year, 5 * year, year)->Unit(benchmark::kMillisecond)->Complexity();
BENCHMARK(with_keeping)->DenseRange(year, 5 * year, year)->Unit(benchmark::kMillisecond)->Complexity();
BENCHMARK(any_day)->Arg(year)->Unit(benchmark::kMillisecond);

}  // namespace
