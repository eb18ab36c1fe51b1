#pragma once

#include <vector>

#include "cropful/engine/away.hpp"

namespace cropful::engine {

/// What calls for somebody between the start and the end of an absence, in order of time. The farm has the diary's head
/// records.
std::vector<Errand> errands(domain::Farm const& farm, Rations const& rations, Absence const& absence);

}  // namespace cropful::engine
