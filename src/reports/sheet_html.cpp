#include "cropful/reports/sheet_html.hpp"

#include "cropful/reports/plan_parts.hpp"
#include "reports/caution_words.hpp"
#include "reports/sheet_parts.hpp"

namespace cropful::reports {

namespace {

using engine::Plan;
using engine::Sheet;

Element meta(std::string const& name, std::string const& content) {
    return Element("meta").set("name", name).set("content", content);
}

Element head(Plan const& plan) {
    Element head("head");
    head.add(Element("meta").set("charset", "utf-8"));
    head.add(meta("viewport", "width=device-width, initial-scale=1"));
    head.add(meta("generator", "cropful"));
    head.add(Element("title", "", plan_name(plan) + ": sheets for " + plan_time(plan)));
    return head.add(style_sheet(sheet_style()));
}

Element link_to(std::string const& id, std::string_view words) {
    Element item("li");
    return item.add(Element("a", "", words).set("href", "#" + id));
}

/// The top of the page on a screen; paper needs none.
Element top(Plan const& plan, std::vector<SheetLink> const& pages) {
    Element header("header");
    header.add(Element("h1", "", plan_name(plan)));
    header.add(Element("p", "time", plan_time(plan)));
    Element list("ul");
    for (SheetLink const& page : pages) list.add(link_to(page.id, page.words));
    Element links("nav");
    links.set("aria-label", "Sheets");
    return header.add(links.add(list));
}

}  // namespace

Element section(SheetPage page, Plan const& plan) {
    Element running("div", "running");  // printed again on every page; on a screen the heading does
    running.set("aria-hidden", "true");
    running.add(Element("span", "", page.title)).add(Element("span", "farm", plan.farm.name));
    Element section("section", "sheet");
    section.set("id", page.id).set("aria-labelledby", page.id + "-title");
    return section.add(std::move(running)).add(std::move(page.body));
}

Element section_heading(std::string_view words) { return Element("h3", "", words); }

Element list_of(std::vector<std::string> const& lines, std::string const& css_class) {
    Element list("ul", css_class);
    for (std::string const& line : lines) list.add(Element("li", "", line));
    return list;
}

void add_cautions(Element& page, std::string_view title, std::vector<engine::Caution> const& cautions,
                  quantities::Measures measures) {
    if (cautions.empty()) return;
    page.add(section_heading(title));
    Element list("ul", "cautions");
    for (CautionLine const& caution : caution_lines(cautions, measures)) list.add(Element("li", "", caution.text));
    page.add(std::move(list));
}

std::string sheet_html(Sheet const& sheet, Houses houses, Charts charts, Sources sources) {
    Element sheets("main");
    auto links = stage_pages(sheet, houses, sheets);
    for (std::size_t i = 0; charts == Charts::drawn && i < sheet.hatches.size(); ++i) {
        sheets.add(hatch_page(sheet, i));
        links.push_back({hatch_id(i), sheet.plan.hatches[i].hatch.name + ": charts"});
    }
    sheets.add(shopping_page(sheet)).add(watch_page(sheet));
    links.push_back({"shopping", "Shopping"});
    links.push_back({"watch", "Watch"});
    if (sources == Sources::named) {
        sheets.add(sources_page(sheet));
        links.push_back({"sources", "Sources"});
    }
    Element body("body");
    body.add(top(sheet.plan, links)).add(std::move(sheets));
    Element html("html");
    html.set("lang", "en").add(head(sheet.plan)).add(std::move(body));
    return "<!DOCTYPE html>\n" + html.html() + "\n";
}

}  // namespace cropful::reports
