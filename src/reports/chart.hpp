#pragma once

#include <optional>
#include <string>
#include <vector>

#include "reports/html.hpp"

/// Small line charts as SVG, read at arm's length and in black and white: lines differ in their dashes and carry their
/// names at their ends. What is drawn can be read back: the drawing names its scales and every path its series.
namespace cropful::reports {

struct Point {
    double x;
    double y;
};

enum class Stroke { solid, dashed };

struct ChartLine {
    std::string series;  // for programs that read the chart back
    std::string label;   // at its last point; empty for none
    Stroke stroke;
    std::vector<Point> points;
};

/// The space between two lines.
struct ChartBand {
    std::vector<Point> low;
    std::vector<Point> high;
    std::string label;  // at the end of the upper line
};

struct Chart {
    std::string id;     // of the drawing, unlike any other on the page
    std::string title;  // what it shows, for those who hear it
    std::string description;
    std::string x_title;
    std::string y_title;
    std::string x_unit;  // of the numbers, for programs
    std::string y_unit;
    double x_from = 0;  // less than x_to; no point lies outside
    double x_to = 1;
    std::optional<ChartBand> band;
    std::vector<ChartLine> lines;  // none of them empty
    std::vector<Point> marks;      // small triangles
};

/// A straight scale from data to the drawing.
struct Scale {
    double from;
    double to;
    double start;
    double end;
    [[nodiscard]] double at(double value) const { return start + (value - from) / (to - from) * (end - start); }
};

/// Round numbers (1, 2 or 5 times a power of ten apart) from `least` to `most`, both ends included where they are
/// round; as few as possible with at most `count` steps between them.
std::vector<double> ticks(double least, double most, int count);

/// The lowest round number not below `value` on the steps that `ticks` takes from 0 to it.
double round_up(double value, int count);

Element draw(Chart const& chart);

}  // namespace cropful::reports
