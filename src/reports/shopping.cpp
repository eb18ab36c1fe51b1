#include "reports/shopping.hpp"

#include "cropful/reports/buy_text.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::reports {

std::vector<ShoppingRow> shopping_rows(engine::Plan const& plan) {
    std::vector<ShoppingRow> rows;
    for (engine::Purchase const& feed : plan.feeds) {
        bool const more = feed.bag ? feed.safe_bags.p95 > 0 : feed.band.p95 + feed.spare > feed.on_hand;
        rows.push_back({"feed", feed.key, feed_title(plan.farm, feed.key), count_words(feed, plan),
                        price_words(feed.safe_cost, plan.farm), feed_words(feed, plan), feed.first_needed,
                        feed.last_needed, !more});
    }
    for (engine::SupplementPurchase const& bought : plan.supplements) {
        rows.push_back({"supplement",
                        bought.key,
                        supplement_title(plan.farm.supplements.at(bought.key)),
                        count_words(bought, plan),
                        price_words(bought.safe_cost, plan.farm),
                        supplement_words(bought, plan),
                        bought.first_needed,
                        {},
                        false});
    }
    auto const readying = readying_rows(plan.readying, plan.farm);
    rows.insert(rows.end(), readying.begin(), readying.end());
    return rows;
}

std::string when_words(ShoppingRow const& row) {
    if (row.last) return "; needed from " + row.first.day() + " to " + row.last->day();
    return "; needed by " + row.first.day();
}

}  // namespace cropful::reports
