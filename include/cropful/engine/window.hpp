#pragma once

#include <optional>
#include <set>
#include <string>

#include "cropful/domain/moment.hpp"

namespace cropful::engine {

/// Hatches by name; none named are all.
struct HatchChoice {
    std::set<std::string> names{};
    [[nodiscard]] bool holds(std::string const& hatch) const { return names.empty() || names.contains(hatch); }
};

/// The part of a farm's plan that is asked for: a stretch of time, whose open ends are the plan's own, and hatches.
struct Window {
    std::optional<domain::Moment> from;
    std::optional<domain::Moment> until;
    HatchChoice hatches{};
    std::optional<domain::Moment> now{};  // what a diary should have said by then and did not is still to be done
    [[nodiscard]] bool holds(domain::Moment at) const { return (!from || *from <= at) && (!until || at < *until); }
};

}  // namespace cropful::engine
