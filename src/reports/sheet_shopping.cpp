#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/buy_page.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/caution_words.hpp"
#include "reports/sheet_parts.hpp"
#include "reports/shopping.hpp"
#include "reports/task_words.hpp"

namespace cropful::reports {

namespace {

using engine::Plan;

Element table_of(Plan const& plan) {
    HtmlTable table("To be sure 19 times in 20", {"Buy", "What and why", "Needed from", "Cost"}, "shopping");
    bool const nothing_priced = !plan.cost_is_whole && plan.safe_cost == quantities::money(0);
    for (engine::ShoppingItem const& item : engine::shopping_list(plan)) {
        table.row(tick_head(count_words(item, plan.farm)))
            .add(cell(what_words(item, plan.farm)))
            .add(Element("td", "by", item.first.day()))
            .add(figure_cell(price_words(item.cost, plan.farm)));
    }
    table.sum(total_count(plan))
        .add(cell(total_words(plan)))
        .add(cell(""))
        .add(figure_cell(nothing_priced ? "" : price_words(plan.safe_cost, plan.farm)));
    return table.element();
}

/// A row for each thing to fetch, in order of days.
Element trips_of(engine::Sheet const& sheet) {
    HtmlTable table("When to go, and what to bring", {"Day", "Bring", "Needed from"}, "trips");
    for (engine::Task const& task : sheet.tasks) {
        if (task.work != engine::Work::fetch) continue;
        table.row(tick_head(task.at.day()))
            .add(Element("td", "by", task_words(task, sheet.plan.farm)))
            .add(cell(task.until ? task.until->day() : ""));
    }
    return table.empty() ? Element("p", "notes", "Enough is on hand: nothing is to be fetched.") : table.element();
}

/// Sources by number, each once.
class SourceNumbers {
  public:
    std::string number(std::string const& source) {
        if (source.empty()) return "";
        auto const known = std::find(all_.begin(), all_.end(), source);
        std::string const number = std::to_string(known - all_.begin() + 1);
        if (known == all_.end()) all_.push_back(source);
        return number;
    }
    [[nodiscard]] Element list() const {
        Element list("ol", "source-list");
        for (std::string const& source : all_) list.add(Element("li", "", source));
        return list;
    }

  private:
    std::vector<std::string> all_;
};

}  // namespace

Element shopping_page(engine::Sheet const& sheet) {
    Plan const& plan = sheet.plan;
    Element page("div", "page");
    page.add(Element("h2", "", "Shopping").set("id", "shopping-title"));
    page.add(Element("p", "about", plan_time(plan))).add(trips_of(sheet));
    page.add(section_heading("In all")).add(table_of(plan));
    return section({"shopping", "Shopping", std::move(page)}, plan);
}

Element sources_page(engine::Sheet const& sheet) {
    Element page("div", "page");
    page.add(Element("h2", "", "Sources and assumptions").set("id", "sources-title"));
    page.add(Element("p", "", how_sure_words()));
    page.add(Element("p", "notes",
                     "Made with cropful. Where a label, a veterinarian or local law says otherwise, they decide."));
    quantities::Measures const measures = sheet.plan.farm.measures;
    SourceNumbers sources;
    HtmlTable figures("What these sheets rest on", {"Figure", "Standing", "Source"}, "sources");
    for (AssumptionLine const& one : assumption_lines(sheet.assumptions, measures)) {
        figures.row(one.text)
            .add(cell(domain::name(one.source.standing)))
            .add(figure_cell(sources.number(one.source.text)));
    }
    page.add(figures.element());
    HtmlTable cautions("Where the cautions come from", {"Caution", "Source"}, "sources");
    for (CautionLine const& one : caution_lines(sheet.plan.cautions, measures)) {
        cautions.row(one.text).add(figure_cell(sources.number(one.source)));
    }
    if (!cautions.empty()) page.add(cautions.element());
    page.add(section_heading("The sources")).add(sources.list());
    return section({"sources", "Sources and assumptions", std::move(page)}, sheet.plan);
}

}  // namespace cropful::reports
