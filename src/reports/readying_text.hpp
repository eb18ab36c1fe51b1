#pragma once

#include <vector>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

/// Bedding or disinfectant on a shopping list.
struct ReadyingRow {
    std::string count;  // "6 bags", "1 pack"; without a pack size the amount
    std::string price;
    std::string words;
    engine::Moment first;  // needed by
};
std::vector<ReadyingRow> readying_rows(engine::Readying const& readying, domain::Farm const& farm);
/// Adds them to a table: count, price, words and the first day.
void add_readying(Table& table, engine::Readying const& readying, domain::Farm const& farm);

/// "330.00 USD", "no price".
std::string price_words(std::optional<quantities::Money> const& cost, domain::Farm const& farm);

}  // namespace cropful::reports
