#pragma once

#include <string>

#include "cropful/readers/rations.hpp"

namespace cropful::sample {

/// A kind as built in.
inline rations::Kind kind(std::string const& key) { return readers::RationsReader().kind(key); }

}  // namespace cropful::sample
