// A proportioner's tank on the bobwhites' line of sample_farms.hpp: 1 g per L through 1:100, kept for 2 days.
#include "cropful/engine/stock.hpp"

#include <catch2/catch.hpp>

#include "cropful/engine/agenda.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::engine;
using namespace cropful::quantities;

namespace {

/// Two hatches on one line, the second a day later.
domain::Farm on_one_line() {
    auto farm = sample::with_supplement("tonic", "1 g per L");
    auto& given = farm.supplements.at("tonic");
    given.from = days(10);
    given.days_long = 7;
    given.stock = domain::Stock{.strength = {}, .proportioner = {100}, .tank = litres(50), .keeps = days(2)};
    farm.hatches.push_back(farm.hatches.front());
    farm.hatches.back().name = "Other";
    farm.hatches.back().date = farm.hatches.front().date + days(1);
    return farm;
}

std::vector<StockFill> fills_of(domain::Farm const& farm, Window const& window = {}) {
    readers::RationsReader const reader;
    return make_plan(farm, reader.load(farm), window).stocks.at(0).fills;
}

}  // namespace

TEST_CASE("a tank is mixed for all on its line, every two days from the course's first chore on", "[engine]") {
    auto const farm = on_one_line();
    auto const fills = fills_of(farm);
    auto const begins = farm.hatches.front().date + days(10);
    REQUIRE(fills.size() == 4);  // days 10 to 18 of the first
    for (std::size_t i = 0; i < fills.size(); ++i) {
        CHECK(in_days(fills[i].at - begins) == Approx(2.0 * static_cast<double>(i)));  // at 07:00
        CHECK_FALSE(fills[i].too_soon);
        CHECK_FALSE(fills[i].too_old);
    }
    auto one = farm;
    one.hatches.pop_back();
    CHECK(in_litres(fills[1].put_in) > 1.5 * in_litres(fills_of(one)[1].put_in));
}

TEST_CASE("its rhythm and its amounts are the same whenever and for whom one asks", "[engine]") {
    auto const farm = on_one_line();
    auto const all = fills_of(farm);
    Window window{.from = farm.hatches.front().date + days(13), .until = {}, .hatches = {{"Other"}}};
    auto const some = fills_of(farm, window);
    REQUIRE(some.size() == 2);
    for (std::size_t i = 0; i < some.size(); ++i) {
        CHECK(some[i].at.iso() == all[i + 2].at.iso());
        CHECK(in_litres(some[i].put_in) == Approx(in_litres(all[i + 2].put_in)));
    }
}

TEST_CASE("stock that does not keep until somebody comes is too old, a small tank is empty too soon", "[engine]") {
    auto farm = on_one_line();
    auto& stock = *farm.supplements.at("tonic").stock;
    stock.keeps = days(0.4);  // 07:00 to 18:00 is 0.46 d
    CHECK(fills_of(farm).front().too_old);
    stock.keeps = days(0.6);  // 18:00 to 07:00 is 0.54 d
    CHECK_FALSE(fills_of(farm).front().too_old);
    stock.tank = litres(0.001);
    CHECK(fills_of(farm).front().too_soon);
}

TEST_CASE("the agenda has one mixing of the tank, and none for each hatch", "[engine]") {
    auto const farm = on_one_line();
    readers::RationsReader const reader;
    auto const rations = reader.load(farm);
    auto const begins = farm.hatches.front().date;
    int mixings = 0;
    for (Task const& task : agenda(make_plan(farm, rations), rations, {}, begins, begins + days(30))) {
        if (task.work != Work::stir) continue;
        ++mixings;
        CHECK(task.line.size() == 2);
        CHECK(in_grams(*task.dose->by_weight) == Approx(100 * in_litres(*task.water)));  // 1 g per L, a hundredfold
    }
    CHECK(mixings == 4);
}

TEST_CASE("from the middle of a day on its stock is that of the batches still to come", "[engine]") {
    auto farm = on_one_line();
    farm.supplements.at("tonic").stock->tank.reset();
    readers::RationsReader const reader;
    Window const window{.from = farm.hatches.front().date + days(13.2), .until = {}};  // 07:00 is over
    auto const plan = make_plan(farm, reader.load(farm), window);
    Volume by_batch, by_day;
    for (HatchPlan const& part : plan.hatches) {
        for (Mix const& mix : part.mixes) {
            for (Batch const& batch : mix.batches) by_batch += *batch.dose.stock;
        }
    }
    for (StockDay const& day : plan.stocks.at(0).days) by_day += day.stock;
    CHECK(in_litres(by_day) > 0);
    CHECK(in_litres(by_day) == Approx(in_litres(by_batch)));
}
