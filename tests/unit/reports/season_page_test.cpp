// What a hatch usually eats is one figure, whichever page says it.
#include "cropful/reports/season_page.hpp"

#include <catch2/catch.hpp>

#include "cropful/reports/buy_page.hpp"
#include "cropful/reports/setting.hpp"
#include "sample_farms.hpp"

using namespace cropful;

TEST_CASE("season and plan say the same usual feed", "[reports]") {
    auto farm = sample::farm_from(sample::bobwhites());
    farm.hatches.at(0).feeding.resize(1);
    auto const bought = reports::set(reports::purchases_part(sample::plan_of(farm)));
    auto const end = bought.find(" lb to be eaten");
    REQUIRE(end != std::string::npos);
    auto const start = bought.find_last_not_of("0123456789,.", end - 1) + 1;
    std::string const usual = bought.substr(start, end - start) + " lb";
    auto const rations = readers::RationsReader().load(farm);
    auto const season = engine::make_overview({farm, rations});
    auto const text = reports::set(reports::season_page(season, reports::Sources::left_out));
    INFO(usual << "\n" << text);
    CHECK(text.find(usual, text.find("FEED COSTS")) != std::string::npos);
}
