// What `away` costs beside only drawing its points, for 20 hatches with a hopper and a drinker group each.
#include <benchmark/benchmark.h>

#include <cstdlib>
#include <ctime>
#include <fstream>

#include "cropful/engine/away.hpp"
#include "cropful/readers/farm.hpp"
#include "cropful/reports/away_json.hpp"
#include "cropful/store/files.hpp"
#include "engine/draws.hpp"

using namespace cropful;

namespace {

constexpr std::size_t points = 16'384;

struct Question {
    readers::RationsReader reader;
    domain::Farm farm = readers::parse_farm(store::read_text(FARM), FARM, reader);
    rations::Rations rations = reader.load(farm);
    engine::Absence absence{domain::parse_moment("2027-07-02T18:00"), domain::parse_moment("2027-07-05T08:00")};

    [[nodiscard]] engine::Away answer() const { return engine::away({farm, rations, {}, points}, absence); }
};

/// Processor seconds that `work` takes.
template <class Work>
double seconds(Work const& work) {
    auto const start = std::clock();
    auto result = work();
    benchmark::DoNotOptimize(result);
    return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

/// Both in turn, so that the ratio is of the same moments of the machine.
void away_over_draws(benchmark::State& state) {
    Question const question;
    engine::Belief const belief = engine::untaught(question.farm, question.rations);
    double draws = 0, away = 0;
    for (auto _ : state) {
        draws += seconds([&] { return engine::Draws(belief, points); });
        double const one = seconds([&] { return question.answer(); });
        away += one;
        state.SetIterationTime(one);
    }
    state.counters["draws_ms"] = benchmark::Counter(1e3 * draws, benchmark::Counter::kAvgIterations);
    state.counters["away_ms"] = benchmark::Counter(1e3 * away, benchmark::Counter::kAvgIterations);
    state.counters["ratio"] = away / draws;
}

BENCHMARK(away_over_draws)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(10);

/// With the environment variable AWAY_ANSWER the answer measured goes into that file, for away_numpy.py.
void write_answer() {
    char const* const path = std::getenv("AWAY_ANSWER");
    if (path != nullptr) std::ofstream(path) << reports::away_json(Question().answer());
}

}  // namespace

int main(int argc, char** argv) {
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
    benchmark::RunSpecifiedBenchmarks();
    write_answer();
}
