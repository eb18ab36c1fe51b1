// What a hundred day-old coturnix eat in their first week, by the tables built in.
#include <cropful/engine/plan.hpp>
#include <cropful/quantities/print.hpp>
#include <cropful/readers/farm.hpp>
#include <iostream>

int main() {
    using namespace cropful;
    readers::RationsReader const reader;
    auto const farm = readers::parse_farm(R"(
        [farm]
        name = "elsewhere"
        units = "metric"
        [feed.starter]
        protein = "24 %"
        [[hatch]]
        name = "one"
        kind = "coturnix"
        date = 2027-04-05
        chicks = 100
        feeding = [{ feed = "starter", from = "0 d" }]
        until = "1 wk"
    )",
                                          "elsewhere.toml", reader);
    auto const rations = reader.load(farm);
    auto const plan = engine::make_plan(farm, rations);
    std::cout << quantities::print(plan.feeds.front().need, farm.measures) << '\n';
}
