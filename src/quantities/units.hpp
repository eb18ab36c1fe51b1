#pragma once

#include <string>
#include <string_view>

#include "cropful/quantities/text.hpp"

namespace cropful::quantities {

/// The unit of that symbol or spelling, or nullptr. "fl-oz", "fl. oz." and "FL OZ" are "fl oz"; the case of one-
/// and two-letter symbols counts.
Unit const* find_unit(std::string_view word);

/// Written bare, it is one thing in the United States and another in the United Kingdom: gal, qt, pt, fl oz.
bool differs_by_country(Unit const& unit);

/// "ton" alone: short, long or metric.
bool is_bare_ton(std::string_view word);

}  // namespace cropful::quantities
