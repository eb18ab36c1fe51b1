#pragma once

#include <string>
#include <string_view>

#include "cropful/reports/sheet_html.hpp"
#include "reports/html.hpp"

/// Parts of the sheet; those about one hatch take its number in the plan.
namespace cropful::reports {

/// A page that starts anew in print and carries `title` at the top of each of its printed pages.
struct SheetPage {
    std::string id;
    std::string title;
    Element body;
};
Element section(SheetPage page, engine::Plan const& plan);

struct SheetLink {
    std::string id;
    std::string words;
};
std::string hatch_id(std::size_t number);  // "hatch-1" for the first
/// A page for each stage of a hatch at which anything is to be done, or for each of its houses; adds them to `sheets`.
std::vector<SheetLink> stage_pages(engine::Sheet const& sheet, Houses houses, Element& sheets);
/// The course of one flock.
Element hatch_page(engine::Sheet const& sheet, std::size_t number);
/// What to watch, lamps and room: for all hatches.
Element watch_page(engine::Sheet const& sheet);
Element shopping_page(engine::Sheet const& sheet);
Element sources_page(engine::Sheet const& sheet);

void add_charts(Element& page, engine::Sheet const& sheet, std::size_t number);

Element section_heading(std::string_view words);
Element list_of(std::vector<std::string> const& lines, std::string const& css_class = "");
/// Nothing without cautions.
void add_cautions(Element& page, std::string_view title, std::vector<engine::Caution> const& cautions,
                  quantities::Measures measures);

/// Fits between < and >: no character of it needs escaping.
std::string_view sheet_style();

}  // namespace cropful::reports
