// How long the main job takes: reading the farm file, planning it, and writing the page.
#include <benchmark/benchmark.h>

#include "cropful/engine/plan.hpp"
#include "cropful/readers/farm.hpp"
#include "cropful/reports/plan_page.hpp"
#include "cropful/store/files.hpp"

using namespace cropful;

namespace {

struct Question {
    readers::RationsReader reader;
    domain::Farm farm = readers::parse_farm(store::read_text(FARM), FARM, reader);
    rations::Rations rations = reader.load(farm);
};

void read(benchmark::State& state) {
    for (auto _ : state) {
        Question question;
        benchmark::DoNotOptimize(question);
    }
}

void plan(benchmark::State& state) {
    Question const question;
    for (auto _ : state) {
        auto answer = engine::make_plan(question.farm, question.rations);
        benchmark::DoNotOptimize(answer);
    }
}

void text(benchmark::State& state) {
    Question const question;
    engine::Plan const answer = engine::make_plan(question.farm, question.rations);
    for (auto _ : state) {
        auto page = reports::plan_page(answer, reports::Detail::one_page, reports::Sources::left_out);
        benchmark::DoNotOptimize(page);
    }
}

BENCHMARK(read)->Unit(benchmark::kMicrosecond);
BENCHMARK(plan)->Unit(benchmark::kMicrosecond);
BENCHMARK(text)->Unit(benchmark::kMicrosecond);

}  // namespace
