#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "cropful/engine/plan.hpp"

namespace cropful::engine {

/// One thing to buy, to be sure 19 times in 20. It refers to the plan or the readying it was made of.
struct ShoppingItem {
    enum class Sort { feed, supplement, bedding, disinfectant };
    Sort sort;
    std::string key;           // in its table of the farm file; of bedding, its brooder's
    std::string title;         // "Quail starter", "bedding for tank"
    std::optional<int> packs;  // or bags; absent where they cannot be counted
    std::optional<Money> cost;
    Moment first;                // needed from then on
    std::optional<Moment> last;  // feed alone: needed until then
    bool none = false;           // enough is on hand
    std::variant<Purchase const*, SupplementPurchase const*, BeddingPurchase const*, DisinfectantPurchase const*> what;
};

/// Everything a plan asks to have: feeds in the order needed, supplements, bedding, disinfectants.
std::vector<ShoppingItem> shopping_list(Plan const& plan);
/// Bedding and disinfectants alone.
std::vector<ShoppingItem> shopping_list(Readying const& readying);

}  // namespace cropful::engine
