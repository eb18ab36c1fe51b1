#pragma once

#include <chrono>

#include "cropful/domain/moment.hpp"

namespace cropful::store {

/// What the clock of this machine's time zone is ahead of UTC when it shows `at`. In the hour it shows twice, in
/// autumn, the first of the two; in the hour it leaves out, in spring, as before the change.
std::chrono::minutes local_offset(domain::Moment at);

}  // namespace cropful::store
