// How long a blend of 20 ingredients and 20 nutrients takes: the linear program alone, and the whole answer with its
// analysis and shadow prices. Figures are invented, from a fixed sequence.
#include <benchmark/benchmark.h>

#include <random>

#include "blends/blend_problem.hpp"
#include "cropful/blends/blend.hpp"
#include "cropful/domain/nutrient.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

constexpr std::size_t ingredients = 20, nutrients = 20;

struct Wish {
    domain::Blend blend;
    std::vector<domain::Ingredient> from;
};

Wish wish() {
    std::minstd_rand random(1);
    auto const between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(random() % 10007) / 10006;
    };
    Wish made;
    for (std::size_t i = 0; i < ingredients; ++i) {
        domain::Ingredient one;
        one.key = one.title = "i" + std::to_string(i);
        one.price = money_per_kilogram(between(0.1, 2));
        for (std::size_t n = 0; n < nutrients; ++n) {
            double const level = between(0, 50);
            one.holds[std::string(domain::nutrients()[n + 2].key)] = {level, level, {}};
        }
        made.from.push_back(one);
    }
    for (std::size_t n = 0; n < nutrients; ++n) {
        std::string const key(domain::nutrients()[n + 2].key);
        double mean = 0;
        for (auto const& one : made.from) mean += one.holds.at(key).least / static_cast<double>(ingredients);
        made.blend.need[key] = {.floor = mean * between(0.6, 0.98), .ceiling = {}};
    }
    made.blend.name = "benchmark";
    made.blend.batch = kilograms(100);
    made.blend.scale = kilograms(0.01);
    return made;
}

void linear_program(benchmark::State& state) {
    Wish const made = wish();
    auto const problem = blends::blend_problem(made.blend, made.from, {}, engine::NeedScale::as_printed);
    for (auto _ : state) {
        auto optimum = blends::minimise(problem.program);
        if (optimum.outcome != blends::Outcome::optimal) state.SkipWithError("no mix");
        benchmark::DoNotOptimize(optimum);
    }
}

void answer(benchmark::State& state) {
    Wish const made = wish();
    for (auto _ : state) {
        auto blend = blends::blend(made.blend, made.from, {});
        benchmark::DoNotOptimize(blend);
    }
}

BENCHMARK(linear_program)->Unit(benchmark::kMicrosecond);
BENCHMARK(answer)->Unit(benchmark::kMicrosecond);

}  // namespace
