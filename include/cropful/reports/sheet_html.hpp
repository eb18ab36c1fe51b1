#pragma once

#include <string>

#include "cropful/engine/sheet.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace cropful::reports {

/// The houses of a hatch as columns of one page, or a page for each.
enum class Houses { together, apart };
/// Whether there is a page of charts for each hatch.
enum class Charts { left_out, drawn };

/// One HTML file to look at and to print: a page to hang up for each stage of a hatch that the next two weeks touch,
/// pages to go shopping with, of what to watch, and of sources where they are named. It holds all it needs and runs no
/// script.
std::string sheet_html(engine::Sheet const& sheet, Houses houses, Charts charts, Sources sources);

/// The figures behind its drawings and tables of the brooder, as JSON text.
std::string sheet_json(engine::Sheet const& sheet);

}  // namespace cropful::reports
