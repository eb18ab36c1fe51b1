#pragma once

#include <string>
#include <vector>

#include "cropful/domain/diary.hpp"
#include "cropful/domain/farm.hpp"
#include "cropful/domain/standing.hpp"

namespace cropful::engine {

/// The source of all that is said of a diary.
inline constexpr char const* of_the_diary = "the diary beside the farm file";

/// The entries of hatches the farm has, from the day of hatch to the day after the last.
domain::Diary in_their_time(domain::Farm const& farm, domain::Diary const& diary);

/// Writes a diary's head records into the hatches. A count on the day of hatch is of the chicks hatched, whatever the
/// hour. Birds moved out within a week of a planned removal are taken for part of it; what is left of one that was made
/// for the most part is dropped. A hatch last counted as 0 ends there. What was so taken, a caution for each move.
std::vector<domain::Caution> record_heads(domain::Farm& farm, domain::Diary const& diary);

}  // namespace cropful::engine
