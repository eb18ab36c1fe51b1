// Drawings of a sheet against sums done by hand.
#include <catch2/catch.hpp>
#include <regex>

#include "cropful/engine/sheet.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/readers/rations.hpp"
#include "cropful/reports/sheet_html.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

/// The figures of the table's first row, under the drawing called `title`.
std::vector<std::string> first_row(std::string const& html, std::string const& title) {
    std::size_t const start = html.find("<tbody>", html.find("<caption>" + title));
    REQUIRE(start != std::string::npos);
    std::string const row = html.substr(start, html.find("</tr>", start) - start);
    std::regex const figure(R"(<td class="figure">([^<]*)</td>)");
    std::vector<std::string> figures;
    for (std::sregex_iterator at(row.begin(), row.end(), figure), end; at != end; ++at) figures.push_back((*at)[1]);
    return figures;
}

}  // namespace

// 10 L of 0.5 kg/L are 5 kg or 11.02 lb, of which the flock eats 1 kg a day.
TEST_CASE("what is left in a hopper is what was put in less what was eaten", "[reports][sheet]") {
    auto const farm = sample::round_figures();
    auto const rations = readers::RationsReader().load(farm);
    auto const sheet = engine::make_sheet({farm, rations}, {});
    auto const& fills = sheet.plan.hatches.front().hoppers()->fills;
    double const days_between = in_days(fills.at(1).age - fills.at(0).age);
    CHECK(days_between < 4.9);
    auto const figures = first_row(
        reports::sheet_html(sheet, reports::Houses::together, reports::Charts::drawn, reports::Sources::left_out),
        "What one hopper holds");
    REQUIRE(figures.size() == 2);
    CHECK(figures[0] == "11 lb");
    CHECK(figures[1] == print(kilograms(5 - days_between), farm.measures));
}
