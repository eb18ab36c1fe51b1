#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cropful/reports/setting.hpp"
#include "cropful/reports/words.hpp"

/// The tables of a page: from their marks to lines.
namespace cropful::reports {

struct Rows {
    std::vector<Align> columns;
    std::size_t indent = 0;
    bool headed = false;
    std::vector<std::vector<std::string>> cells;
};

std::vector<std::string> split(std::string_view text, char mark);
/// From the fields that follow the kind.
Rows read_rows(std::string_view fields);

/// The longest bar, in days; 0 without bars.
double longest_bar(Rows const& rows);

/// The same with a last column of bars drawn, `longest` as long as there is room for; the column goes where there is
/// none, or where no bars are drawn.
Rows with_bars(Rows rows, double longest, Setting const& setting);

/// In columns; written out row by row where they are too wide.
std::string set_table(Rows const& rows, std::size_t page);

}  // namespace cropful::reports
