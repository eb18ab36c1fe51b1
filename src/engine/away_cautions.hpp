#pragma once

#include "cropful/engine/away.hpp"
#include "engine/use_law.hpp"

namespace cropful::engine {

/// Whether a course meets an absence and cannot be given all through it: it begins or ends meanwhile, or the solution
/// does not keep so long (a day, where nothing is said). Plain water is left then.
bool is_broken_off(domain::Course const& its, domain::Supplement const& given, Ages ages);

/// What else can go wrong while nobody is there.
std::vector<Caution> away_cautions(Away const& away, Rations const& rations);

}  // namespace cropful::engine
