#include "reports/chart.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"

namespace cropful::reports {

namespace {

using quantities::number;
using quantities::plain;

// The drawing, in its own units; text is 15 of them high.
constexpr double chart_width = 420, chart_height = 272;
constexpr double left = 50, right = 332, top = 34, bottom = 222;
constexpr double line_height = 17;
constexpr int y_steps = 5, x_steps = 9;
constexpr double rounding = 1e-9;  // of a step

/// The distance of round numbers, with at most `count` of them from `least` to `most`.
double step_between(double least, double most, int count) {
    double const rough = (most - least) / count;
    double const power = std::pow(10.0, std::floor(std::log10(rough)));
    for (double const times : {1.0, 2.0, 5.0}) {
        if (times * power >= rough * (1 - rounding)) return times * power;
    }
    return 10 * power;
}

std::string px(double x) { return number(x, 2); }

/// A number for programs: to a millionth, without commas.
std::string exact(double x) {
    std::string text = number(x, 6);
    std::erase(text, ',');
    return text;
}

Element text_at(double x, double y, std::string const& css_class, std::string_view words) {
    Element text("text", css_class, words);
    text.set("x", px(x)).set("y", px(y));
    return text;
}

Element line_between(Point from, Point to, std::string const& css_class) {
    Element line("line", css_class);
    line.set("x1", px(from.x)).set("y1", px(from.y)).set("x2", px(to.x)).set("y2", px(to.y));
    return line;
}

struct Frame {
    Scale x;
    Scale y;
    [[nodiscard]] std::string path(std::vector<Point> const& points) const {
        std::string d;
        for (Point const& point : points) {
            d += (d.empty() ? "M" : " L") + px(x.at(point.x)) + ' ' + px(y.at(point.y));
        }
        return d;
    }
};

/// Upwards from 0 to a round number over the highest point.
Frame frame(Chart const& chart) {
    double highest = 0;
    auto const see = [&](std::vector<Point> const& points) {
        for (Point const& point : points) highest = std::max(highest, point.y);
    };
    for (ChartLine const& line : chart.lines) see(line.points);
    if (chart.band) see(chart.band->high);
    return {{chart.x_from, chart.x_to, left, right}, {0, round_up(highest, y_steps), bottom, top}};
}

void add_axes(Element& svg, Frame const& frame, Chart const& chart) {
    for (double const tick : ticks(frame.y.from, frame.y.to, y_steps)) {
        double const y = frame.y.at(tick);
        svg.add(line_between({left, y}, {right, y}, tick == 0 ? "axis" : "grid"));
        svg.add(text_at(left - 7, y + 5, "tick end", plain(tick)));
    }
    for (double const tick : ticks(frame.x.from, frame.x.to, x_steps)) {
        double const x = frame.x.at(tick);
        svg.add(line_between({x, bottom}, {x, bottom + 5}, "axis"));
        svg.add(text_at(x, bottom + 21, "tick middle", plain(tick)));
    }
    svg.add(text_at(4, 15, "axis-title", chart.y_title));
    svg.add(text_at(right, chart_height - 8, "axis-title end", chart.x_title));
}

void add_band(Element& svg, Frame const& frame, ChartBand const& band) {
    std::vector<Point> around = band.high;
    around.insert(around.end(), band.low.rbegin(), band.low.rend());
    svg.add(Element("path", "band").set("d", frame.path(around) + " Z"));
    svg.add(Element("path", "edge").set("d", frame.path(band.high)).set("data-series", "p95"));
    svg.add(Element("path", "edge").set("d", frame.path(band.low)).set("data-series", "p05"));
}

void add_marks(Element& svg, Frame const& frame, std::vector<Point> const& marks) {
    for (Point const& mark : marks) {
        double const x = frame.x.at(mark.x), y = frame.y.at(mark.y) - 3;
        std::vector<Point> const corners{{x, y}, {x - 4, y - 7}, {x + 4, y - 7}};
        std::string d;
        for (Point const& corner : corners) d += (d.empty() ? "M" : " L") + px(corner.x) + ' ' + px(corner.y);
        svg.add(Element("path", "mark").set("d", d + " Z"));
    }
}

/// The names of the lines beside their ends, moved apart where they would touch.
void add_labels(Element& svg, Frame const& frame, Chart const& chart) {
    struct Label {
        double y;
        std::string words;
        std::string css_class;
    };
    std::vector<Label> labels;
    auto const add = [&](Point const& end, std::string const& words, Stroke stroke) {
        labels.push_back({frame.y.at(end.y) + 5, words, stroke == Stroke::solid ? "label" : "label dark"});
    };
    for (ChartLine const& line : chart.lines) add(line.points.back(), line.label, line.stroke);
    if (chart.band) add(chart.band->high.back(), chart.band->label, Stroke::solid);
    std::erase_if(labels, [](Label const& label) { return label.words.empty(); });
    std::stable_sort(labels.begin(), labels.end(), [](Label const& a, Label const& b) { return a.y < b.y; });
    for (std::size_t i = 1; i < labels.size(); ++i) labels[i].y = std::max(labels[i].y, labels[i - 1].y + line_height);
    double floor = bottom + 5;
    for (auto label = labels.rbegin(); label != labels.rend(); ++label) {
        label->y = std::min(label->y, floor);
        floor = label->y - line_height;
    }
    for (Label const& label : labels) svg.add(text_at(right + 7, label.y, label.css_class, label.words));
}

Element empty_drawing(Frame const& frame, Chart const& chart) {
    Element svg("svg", "chart");
    svg.set("id", chart.id).set("viewBox", "0 0 " + plain(chart_width) + ' ' + plain(chart_height)).set("role", "img");
    svg.set("aria-labelledby", chart.id + "-title").set("aria-describedby", chart.id + "-desc");
    svg.set("data-x-unit", chart.x_unit).set("data-y-unit", chart.y_unit);
    auto const scale = [&](std::string const& name, Scale const& one) {
        svg.set("data-" + name + "-from", exact(one.from)).set("data-" + name + "-to", exact(one.to));
        svg.set("data-" + name + "-start", px(one.start)).set("data-" + name + "-end", px(one.end));
    };
    scale("x", frame.x);
    scale("y", frame.y);
    svg.add(Element("title", "", chart.title).set("id", chart.id + "-title"));
    svg.add(Element("desc", "", chart.description).set("id", chart.id + "-desc"));
    return svg;
}

}  // namespace

std::vector<double> ticks(double least, double most, int count) {
    double const step = step_between(least, most, count);
    std::vector<double> all;
    auto const first = quantities::whole_number<long>(std::ceil(least / step - rounding));
    auto const last = quantities::whole_number<long>(std::floor(most / step + rounding));
    for (long i = first; i <= last; ++i) all.push_back(static_cast<double>(i) * step);
    return all;
}

double round_up(double value, int count) {
    if (!(value > 0)) return 1;
    double const step = step_between(0, value, count);
    return std::ceil(value / step - rounding) * step;
}

Element draw(Chart const& chart) {
    Frame const axes = frame(chart);
    Element svg = empty_drawing(axes, chart);
    add_axes(svg, axes, chart);
    if (chart.band) add_band(svg, axes, *chart.band);
    for (ChartLine const& line : chart.lines) {
        Element path("path", line.stroke == Stroke::solid ? "line" : "line dashed");
        svg.add(path.set("d", axes.path(line.points)).set("data-series", line.series));
    }
    add_marks(svg, axes, chart.marks);
    add_labels(svg, axes, chart);
    return svg;
}

}  // namespace cropful::reports
