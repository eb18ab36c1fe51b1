#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cropful/domain/diary.hpp"
#include "cropful/domain/farm.hpp"

/// A diary as a CSV file: the columns at, hatch, what, amount, unit, note and utc_offset_min, one line for each entry.
/// The last says what the barn's clock was ahead of UTC, and may be left out.
namespace cropful::readers {

/// Amounts in kg, L or birds with every digit they have, so that they are read back unchanged.
std::string diary_csv(domain::Diary const& diary);

/// The entries of a CSV text. The columns may stand in any order; amounts may be in any unit of weight or volume, read
/// as the farm measures. Throws BadInput with file, line and column for whatever is not an entry of one of its hatches.
std::vector<domain::Entry> parse_diary_csv(std::string_view text, std::string const& file, domain::Farm const& farm);

}  // namespace cropful::readers
