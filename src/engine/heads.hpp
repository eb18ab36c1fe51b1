#pragma once

#include "cropful/domain/diary.hpp"
#include "cropful/domain/farm.hpp"

namespace cropful::engine {

/// Writes a diary's head records into the hatches. A removal planned within a week of birds moved out is taken to be
/// that move and dropped.
void record_heads(domain::Farm& farm, domain::Diary const& diary);

}  // namespace cropful::engine
