#pragma once

#include <string>
#include <string_view>

#include "cropful/engine/sheet.hpp"
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

std::string hatch_id(std::size_t number);  // "hatch-1" for the first
Element hatch_page(engine::Sheet const& sheet, std::size_t number);
Element shopping_page(engine::Sheet const& sheet);
Element sources_page(engine::Sheet const& sheet);

void add_hopper_fills(Element& page, engine::HatchPlan const& hatch, quantities::Measures measures);
void add_drinker_fills(Element& page, engine::HatchPlan const& hatch, quantities::Measures measures);
void add_course(Element& page, engine::HatchPlan const& hatch, domain::Farm const& farm);
/// Warmth and room by age, what to watch, and the lamp.
void add_brooder(Element& page, engine::Sheet const& sheet, std::size_t number);
void add_charts(Element& page, engine::Sheet const& sheet, std::size_t number);

Element section_heading(std::string_view words);
Element list_of(std::vector<std::string> const& lines, std::string const& css_class = "");
/// Nothing without cautions.
void add_cautions(Element& page, std::string_view title, std::vector<engine::Caution> const& cautions,
                  quantities::Measures measures);

/// Fits between < and >: no character of it needs escaping.
std::string_view sheet_style();

}  // namespace cropful::reports
