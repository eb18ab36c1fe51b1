#pragma once

#include <string>

#include "cropful/engine/sheet.hpp"

namespace cropful::reports {

/// One HTML file to look at and to print: pages for each hatch, one to go shopping with, one of sources. It holds all
/// it needs and runs no script.
std::string sheet_html(engine::Sheet const& sheet);

/// The figures behind its drawings and tables of the brooder, as JSON text.
std::string sheet_json(engine::Sheet const& sheet);

}  // namespace cropful::reports
