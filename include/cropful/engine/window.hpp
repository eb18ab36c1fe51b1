#pragma once

#include <optional>
#include <set>
#include <string>

#include "cropful/domain/moment.hpp"

namespace cropful::engine {

/// The part of a farm's plan that is asked for: a stretch of time, whose open ends are the plan's own, and hatches.
struct Window {
    std::optional<domain::Moment> from;
    std::optional<domain::Moment> until;
    std::set<std::string> hatches{};  // by name; empty: all
    [[nodiscard]] bool holds(domain::Moment at) const { return (!from || *from <= at) && (!until || at < *until); }
    [[nodiscard]] bool is_about(std::string const& hatch) const { return hatches.empty() || hatches.contains(hatch); }
};

}  // namespace cropful::engine
