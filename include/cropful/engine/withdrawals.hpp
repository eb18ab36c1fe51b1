#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"

namespace cropful::engine {

using domain::Duration;

/// A medicated feed or a medicine in the water of a hatch, and what the farm file states of waiting after it.
struct Withdrawal {
    std::string key;    // of the feed or supplement
    std::string title;  // what it is called
    std::string drug;   // may be empty
    bool in_water = false;
    Duration from;  // ages at which it is planned to be given
    Duration to;
    std::optional<Duration> birds;  // more than none
    std::optional<Duration> eggs;   // more than none, and only where eggs are laid before it is over
};

/// Of a hatch's whole life, feeds before supplements; those without a time to wait are left out.
std::vector<Withdrawal> withdrawals_of(domain::Hatch const& hatch, domain::Farm const& farm);

}  // namespace cropful::engine
