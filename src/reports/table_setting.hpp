#pragma once

#include <vector>

#include "cropful/reports/setting.hpp"

/// The tables of a page as lines.
namespace cropful::reports {

/// The longest bar; 0 without bars.
double longest_bar(Table const& table);

/// The same with its bars drawn in a column of their own, `longest` as long as there is room for; without one where
/// there is no room, no bar, or none is drawn.
Table with_bars(Table const& table, double longest, Setting const& setting);

/// In columns; written out row by row where they are too wide.
std::vector<Styled> set_table(Table const& table, std::size_t page);

}  // namespace cropful::reports
