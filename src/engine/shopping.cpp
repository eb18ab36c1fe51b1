#include "cropful/engine/shopping.hpp"

namespace cropful::engine {

namespace {

using Sort = ShoppingItem::Sort;

ShoppingItem feed_item(Purchase const& feed) {
    bool const more = feed.bag ? feed.safe_bags.p95 > 0 : feed.short_by() > Mass();
    return {.sort = Sort::feed,
            .key = feed.key,
            .title = feed.title.empty() ? feed.key : feed.title,
            .packs = feed.bag ? std::optional(feed.safe_bags.p95) : std::nullopt,
            .cost = feed.safe_cost,
            .first = feed.first_needed,
            .last = feed.last_needed,
            .none = !more,
            .what = &feed};
}

ShoppingItem supplement_item(SupplementPurchase const& bought) {
    return {.sort = Sort::supplement,
            .key = bought.key,
            .title = bought.title,
            .packs = bought.packs,
            .cost = bought.cost,
            .first = bought.first_needed,
            .last = {},
            .what = &bought};
}

ShoppingItem bedding_item(BeddingPurchase const& one) {
    return {.sort = Sort::bedding,
            .key = one.brooder,
            .title = "bedding for " + one.brooder,
            .packs = one.bags,
            .cost = one.cost,
            .first = one.first,
            .last = {},
            .none = one.bags == 0,
            .what = &one};
}

ShoppingItem disinfectant_item(DisinfectantPurchase const& one) {
    return {.sort = Sort::disinfectant,
            .key = one.key,
            .title = one.title,
            .packs = one.packs,
            .cost = one.cost,
            .first = one.first,
            .last = {},
            .what = &one};
}

}  // namespace

std::vector<ShoppingItem> shopping_list(Readying const& readying) {
    std::vector<ShoppingItem> all;
    for (BeddingPurchase const& one : readying.bedding) all.push_back(bedding_item(one));
    for (DisinfectantPurchase const& one : readying.disinfectants) all.push_back(disinfectant_item(one));
    return all;
}

std::vector<ShoppingItem> shopping_list(Plan const& plan) {
    std::vector<ShoppingItem> all;
    for (Purchase const& feed : plan.feeds) all.push_back(feed_item(feed));
    for (SupplementPurchase const& bought : plan.supplements) all.push_back(supplement_item(bought));
    auto const readying = shopping_list(plan.readying);
    all.insert(all.end(), readying.begin(), readying.end());
    return all;
}

}  // namespace cropful::engine
