#include "reports/chart.hpp"

#include <catch2/catch.hpp>

using namespace cropful::reports;

namespace {

using Numbers = std::vector<double>;

// Steps of 1, 2 and 5 times a power of ten; worked by hand.
Numbers rounded(Numbers numbers) {
    for (double& x : numbers) x = static_cast<double>(static_cast<long>(x * 1e6 + 0.5)) / 1e6;
    return numbers;
}

Chart sample() {
    Chart chart;
    chart.id = "c";
    chart.title = "Feed & water";
    chart.x_unit = "week";
    chart.y_unit = "lb";
    chart.x_from = 0;
    chart.x_to = 2;
    chart.lines.push_back({"central", "usually", Stroke::solid, {{0, 0}, {1, 5}, {2, 10}}});
    return chart;
}

bool holds(std::string const& text, std::string const& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("a scale goes straight from its start to its end", "[reports][chart]") {
    Scale const scale{0, 10, 222, 34};  // upwards on a drawing is downwards in its numbers
    CHECK(scale.at(0) == 222);
    CHECK(scale.at(10) == 34);
    CHECK(scale.at(5) == 128);
}

TEST_CASE("ticks are round numbers", "[reports][chart]") {
    CHECK(ticks(0, 10, 5) == Numbers{0, 2, 4, 6, 8, 10});
    CHECK(ticks(0, 25, 5) == Numbers{0, 5, 10, 15, 20, 25});
    CHECK(ticks(0, 16, 9) == Numbers{0, 2, 4, 6, 8, 10, 12, 14, 16});
    CHECK(ticks(3.2, 16, 9) == Numbers{4, 6, 8, 10, 12, 14, 16});
    CHECK(ticks(0, 30, 9) == Numbers{0, 5, 10, 15, 20, 25, 30});
    CHECK(rounded(ticks(0, 0.3, 5)) == Numbers{0, 0.1, 0.2, 0.3});
    CHECK(ticks(0, 1000, 5) == Numbers{0, 200, 400, 600, 800, 1000});
}

TEST_CASE("a chart's top is the next round number", "[reports][chart]") {
    CHECK(round_up(240, 5) == 250);
    CHECK(round_up(250, 5) == 250);
    CHECK(round_up(251, 5) == 300);
    CHECK(round_up(7.1, 5) == 8);
    CHECK(round_up(0, 5) == 1);
}

// The frame is 50 to 332 across and 222 to 34 up: week 1 of 2 is 191, 5 of 10 is 128.
TEST_CASE("a line goes through its points and names its scales", "[reports][chart]") {
    std::string const drawn = draw(sample()).html();
    CHECK(holds(drawn, "d=\"M50.00 222.00 L191.00 128.00 L332.00 34.00\" data-series=\"central\""));
    CHECK(holds(drawn, "data-x-from=\"0.000000\" data-x-to=\"2.000000\" data-x-start=\"50.00\" data-x-end=\"332.00\""));
    CHECK(
        holds(drawn, "data-y-from=\"0.000000\" data-y-to=\"10.000000\" data-y-start=\"222.00\" data-y-end=\"34.00\""));
    CHECK(holds(drawn, "<title id=\"c-title\">Feed &amp; water</title>"));
    CHECK(holds(drawn, "class=\"label\" x=\"339.00\" y=\"39.00\">usually</text>"));
}

TEST_CASE("labels that would touch are moved apart, and stay in the drawing", "[reports][chart]") {
    Chart chart = sample();
    chart.lines.push_back({"need", "needed", Stroke::dashed, {{0, 0}, {2, 10}}});
    std::string drawn = draw(chart).html();
    CHECK(holds(drawn, "y=\"39.00\">usually"));
    CHECK(holds(drawn, "class=\"label dark\" x=\"339.00\" y=\"56.00\">needed"));
    chart.lines[0].points = chart.lines[1].points = {{0, 10}, {2, 0}};
    drawn = draw(chart).html();
    CHECK(holds(drawn, "y=\"210.00\">usually"));
    CHECK(holds(drawn, "y=\"227.00\">needed"));
}

TEST_CASE("a band is drawn around and by its edges", "[reports][chart]") {
    Chart chart = sample();
    chart.band = ChartBand{{{0, 0}, {2, 5}}, {{0, 5}, {2, 10}}, "hungry"};
    std::string const drawn = draw(chart).html();
    CHECK(holds(drawn, "class=\"band\" d=\"M50.00 128.00 L332.00 34.00 L332.00 128.00 L50.00 222.00 Z\""));
    CHECK(holds(drawn, "d=\"M50.00 128.00 L332.00 34.00\" data-series=\"p95\""));
    CHECK(holds(drawn, "d=\"M50.00 222.00 L332.00 128.00\" data-series=\"p05\""));
}

TEST_CASE("thousands are written without commas for programs", "[reports][chart]") {
    Chart chart = sample();
    chart.lines[0].points = {{0, 0}, {2, 4000}};
    CHECK(holds(draw(chart).html(), "data-y-to=\"4000.000000\""));
}
