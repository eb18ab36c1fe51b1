#pragma once

#include <optional>
#include <string>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace cropful::reports {

/// The last row of the list: how many bags and packs, and "in all" with what of it is named apart.
std::string total_count(engine::Plan const& plan);
std::string total_words(engine::Plan const& plan);

/// Bags and packs with what they cost, without notes: the first part of a plan. With or without why so many.
Page purchases_part(engine::Plan const& plan, bool why = true);

/// What to buy, by when, and why.
Page buy_page(engine::Plan const& plan, Sources sources);

}  // namespace cropful::reports
