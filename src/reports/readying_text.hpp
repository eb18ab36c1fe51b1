#pragma once

#include "cropful/engine/plan.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

/// Adds a row for each bedding and disinfectant: packs, price, what for.
void add_readying(Table& table, engine::Readying const& readying, domain::Farm const& farm);

/// "330.00 USD", "no price".
std::string price_words(std::optional<quantities::Money> const& cost, domain::Farm const& farm);

}  // namespace cropful::reports
