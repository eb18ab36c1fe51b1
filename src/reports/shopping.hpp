#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/engine/plan.hpp"

namespace cropful::reports {

/// One thing to buy, in words: feed, supplement, bedding or disinfectant.
struct ShoppingRow {
    std::string sort;   // "feed", "supplement", "bedding", "disinfectant"
    std::string key;    // in its table of the farm file; of bedding, its brooder's
    std::string title;  // "Quail starter", "bedding for tank"
    std::string count;  // "6 bags", "1 pack", "none"; the amount where packs cannot be counted
    std::string price;  // "330.00 USD", "no price"
    std::string words;  // what it is and what it is for
    engine::Moment first;
    std::optional<engine::Moment> last;  // feed alone: needed until then
    bool none;                           // enough is on hand
};

/// Everything a plan asks to have, to be sure 19 times in 20: feeds in the order needed, supplements, then `readying`.
std::vector<ShoppingRow> shopping_rows(engine::Plan const& plan);
/// Bedding and disinfectant alone.
std::vector<ShoppingRow> readying_rows(engine::Readying const& readying, domain::Farm const& farm);

/// "; needed from Mon 5 Apr to Mon 17 May", "; needed by Mon 5 Apr".
std::string when_words(ShoppingRow const& row);

/// "330.00 USD", "no price".
std::string price_words(std::optional<quantities::Money> const& cost, domain::Farm const& farm);

}  // namespace cropful::reports
