#pragma once

#include <optional>

#include "cropful/domain/moment.hpp"

namespace cropful::engine {

/// A stretch of time to plan for; open ends are the plan's own.
struct Window {
    std::optional<domain::Moment> from;
    std::optional<domain::Moment> until;
    [[nodiscard]] bool holds(domain::Moment at) const { return (!from || *from <= at) && (!until || at < *until); }
};

}  // namespace cropful::engine
