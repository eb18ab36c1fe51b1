#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "reports/chart.hpp"
#include "reports/sheet_parts.hpp"

namespace cropful::reports {

namespace {

using engine::HatchPlan;
using engine::HatchSheet;
using quantities::Duration;
using quantities::in_days;
using quantities::in_grams;
using quantities::Mass;
using quantities::Measures;
using quantities::number;
using quantities::print;

constexpr double weeks_from = 21;       // days; shorter courses are drawn by days
constexpr std::size_t most_fills = 60;  // a drawing of more would be black

/// What the drawings of one hatch share.
struct Drawing {
    HatchPlan const& hatch;
    HatchSheet const& sheet;
    Measures measures;
    std::string id;
    bool by_weeks;

    [[nodiscard]] double x(Duration age) const { return in_days(age) / (by_weeks ? 7 : 1); }
    [[nodiscard]] double weight(Mass mass) const {
        return measures == Measures::us ? quantities::in_pounds(mass) : quantities::in_kilograms(mass);
    }
    [[nodiscard]] std::string unit() const { return measures == Measures::us ? "lb" : "kg"; }
    [[nodiscard]] Chart chart(std::string const& name) const {
        Chart chart;
        chart.id = id + "-" + name;
        chart.x_title = by_weeks ? "age, weeks" : "age, days";
        chart.x_unit = by_weeks ? "week" : "day";
        chart.x_from = x(first_age(hatch));
        chart.x_to = x(last_age(hatch));
        return chart;
    }
};

/// A drawing with its title, a sentence on how to read it, and its figures for those who want numbers.
Element figure_of(Chart const& chart, std::string_view how, HtmlTable const& figures) {
    Element caption("figcaption");
    caption.add(Element("strong", "", chart.title)).text(" ").text(how);
    Element details("details");
    details.add(Element("summary", "", "Figures: " + chart.title)).add(figures.element());
    Element figure("figure");
    return figure.add(std::move(caption)).add(draw(chart)).add(std::move(details));
}

Element birds_figure(Drawing const& drawing) {
    Chart chart = drawing.chart("birds");
    ChartLine line{"birds", quantities::print(drawing.sheet.heads.back().birds) + " birds", Stroke::solid, {}};
    for (auto const& at : drawing.sheet.heads)
        line.points.push_back({drawing.x(at.age), quantities::in_birds(at.birds)});
    chart.title = "Birds alive";
    chart.description = "From " + quantities::print(drawing.sheet.heads.front().birds) + " to " +
                        quantities::print(drawing.sheet.heads.back().birds) + " birds.";
    chart.y_title = "birds";
    chart.y_unit = "bird";
    chart.lines.push_back(std::move(line));
    HtmlTable table("Birds alive, week by week", {"Week", "From", "Birds"});
    for (engine::Week const& week : drawing.hatch.weeks) {
        table.row(std::to_string(week.number))
            .add(cell((drawing.hatch.hatch.date + week.from).day()))
            .add(figure_cell(quantities::print(week.birds)));
    }
    return figure_of(chart, "by the usual losses, and less those planned to leave.", table);
}

Element feed_figure(Drawing const& drawing) {
    Chart chart = drawing.chart("feed");
    ChartLine line{"central", "usually", Stroke::solid, {}};
    ChartBand band{{}, {}, "hungry"};
    HtmlTable table("Feed on the day", {"Age", "Date", "Usually", "Hungry flock"});
    for (std::size_t i = 0; i < drawing.sheet.days.size(); ++i) {
        engine::DayFeed const& day = drawing.sheet.days[i];
        double const x = drawing.x(day.age);
        line.points.push_back({x, drawing.weight(day.central)});
        band.low.push_back({x, drawing.weight(day.band.p05)});
        band.high.push_back({x, drawing.weight(day.band.p95)});
        if (i % 7 != 0) continue;
        table.row(quantities::print_age(day.age))
            .add(cell((drawing.hatch.hatch.date + day.age).day()))
            .add(figure_cell(print(day.central, drawing.measures)))
            .add(figure_cell(print(day.band.p95, drawing.measures)));
    }
    chart.title = "Feed a day";
    chart.description = "The flock's feed on each day: usual, and the band that holds 9 flocks in 10.";
    chart.y_title = drawing.unit() + " a day";
    chart.y_unit = drawing.unit();
    chart.band = std::move(band);
    chart.lines.push_back(std::move(line));
    return figure_of(
        chart, "for the whole flock. Of 20 flocks 1 eats more than the upper edge, and 1 less than the lower.", table);
}

Element hopper_figure(Drawing const& drawing) {
    auto const& fills = drawing.hatch.hoppers()->fills;
    std::size_t const count = std::min(fills.size(), most_fills);
    Chart chart = drawing.chart("hopper");
    ChartLine line{"content", "", Stroke::solid, {}};
    HtmlTable table("What one hopper holds", {"Filled", "Then", "At the next fill"});
    for (std::size_t i = 0; i < count; ++i) {
        auto const& fill = fills[i];
        Duration const next = i + 1 < fills.size() ? fills[i + 1].age : drawing.hatch.stages.front().to;
        Mass const left = std::max(quantities::kilograms(0), fill.content - fill.used);
        line.points.push_back({drawing.x(fill.age), drawing.weight(fill.content)});
        line.points.push_back({drawing.x(next), drawing.weight(left)});
        chart.marks.push_back(line.points[line.points.size() - 2]);
        table.row(short_moment(fill.at, drawing.measures))
            .add(figure_cell(print_measured(fill.content, drawing.measures)))
            .add(figure_cell(print(left, drawing.measures)));
    }
    chart.title = "What a hopper holds";
    chart.description = "A saw-tooth: full at each fill, and what is usually left at the next.";
    chart.y_title = drawing.unit() + " in one hopper";
    chart.y_unit = drawing.unit();
    chart.lines.push_back(std::move(line));
    std::string const some = count < fills.size() ? " The first " + std::to_string(count) + " fills." : "";
    return figure_of(chart,
                     "A triangle is a fill. What is usually left then is your margin: the next fill is set so that "
                     "hungry birds do not run out." +
                         some,
                     table);
}

/// Lines of protein by age: one from where a label states it on, one for the need.
Element protein_figure(Drawing const& drawing) {
    Chart chart = drawing.chart("protein");
    ChartLine given{"given", "given", Stroke::solid, {}}, need{"need", "needed", Stroke::dashed, {}};
    for (engine::ProteinAt const& at : drawing.sheet.protein) {
        need.points.push_back({drawing.x(at.age), in_grams(at.need)});
        if (at.given) given.points.push_back({drawing.x(at.age), in_grams(*at.given)});
    }
    HtmlTable table("Protein a bird a day, halfway through each stretch", {"Feed", "Ages", "Given", "Needed"});
    for (engine::Check const& check : drawing.hatch.checks) {
        if (check.nutrient != "protein" || !check.given_per_bird) continue;
        table.row(check.feed)
            .add(cell(ages_words(check.from, check.to)))
            .add(figure_cell(number(in_grams(*check.given_per_bird), 2) + " g"))
            .add(figure_cell(number(in_grams(*check.need_per_bird), 2) + " g"));
    }
    chart.title = "Protein";
    chart.description = "Grams of protein a bird is given a day by the label, and needs by the table.";
    chart.y_title = "g a bird a day";
    chart.y_unit = "g";
    if (!given.points.empty()) chart.lines.push_back(std::move(given));
    chart.lines.push_back(std::move(need));  // on top, so that both are seen where they are one
    return figure_of(chart,
                     table.empty() ? "The labels state none, so only the need is drawn."
                                   : "by the label, against the need of the table.",
                     table);
}

}  // namespace

void add_charts(Element& page, engine::Sheet const& sheet, std::size_t number) {
    HatchPlan const& hatch = sheet.plan.hatches[number];
    bool const by_weeks = in_days(last_age(hatch) - first_age(hatch)) > weeks_from;
    Drawing const drawing{hatch, sheet.hatches[number], sheet.plan.farm.measures, hatch_id(number), by_weeks};
    Element charts("div", "charts");
    charts.add(birds_figure(drawing)).add(feed_figure(drawing));
    if (hatch.hoppers() && !hatch.hoppers()->fills.empty()) charts.add(hopper_figure(drawing));
    if (!drawing.sheet.protein.empty()) charts.add(protein_figure(drawing));
    page.add(section_heading("The course of the flock")).add(std::move(charts));
}

}  // namespace cropful::reports
