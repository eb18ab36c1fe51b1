#pragma once

#include <string>

#include "cropful/engine/rations.hpp"

namespace cropful::engine {

/// The built-in drug of this name, whatever its case; of several rows the one for this kind of bird, else the first.
Drug const* find_drug(std::string const& name, std::string const& kind, Rations const& rations);

/// The drug a product's title speaks of: the longest of the names that stand in it as whole words.
Drug const* drug_in_title(std::string const& title, std::string const& kind, Rations const& rations);

/// Whether two names mean one substance: "amprolium" and "amprolium with ethopabate".
bool same_substance(std::string const& a, std::string const& b);

}  // namespace cropful::engine
