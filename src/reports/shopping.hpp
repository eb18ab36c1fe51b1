#pragma once

#include <optional>
#include <string>

#include "cropful/engine/shopping.hpp"
#include "cropful/reports/page.hpp"

/// Things to buy, in words.
namespace cropful::reports {

/// "6 bags", "1 pack", "none"; the amount where packs cannot be counted.
std::string count_words(engine::ShoppingItem const& item, domain::Farm const& farm);
/// What it is, with the size it is sold in: "Quail starter, 50 lb".
std::string name_words(engine::ShoppingItem const& item, domain::Farm const& farm);
/// What it is and what it is for: "Quail starter, 50 lb: 303 lb to be eaten, 344 lb by hungry birds".
std::string what_words(engine::ShoppingItem const& item, domain::Farm const& farm);
/// "; needed from Mon 5 Apr to Mon 17 May", "; needed by Mon 5 Apr".
std::string when_words(engine::ShoppingItem const& item);
/// "330.00 USD", "no price".
std::string price_words(std::optional<quantities::Money> const& cost, domain::Farm const& farm);

/// A row for each: how much, its price, what, why and when; or what and when alone.
enum class Shopping { why, what };
Table shopping_table(std::vector<engine::ShoppingItem> const& items, domain::Farm const& farm,
                     Shopping told = Shopping::why);

}  // namespace cropful::reports
