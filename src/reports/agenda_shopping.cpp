#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/agenda.hpp"
#include "reports/shopping.hpp"

namespace cropful::reports {

namespace {

using engine::Moment;
using engine::Plan;
using engine::ShoppingItem;
using quantities::print;

/// The whole day before; of a plan that begins among birds, no day before its first.
Moment day_to_buy(Moment needed, Plan const& plan) {
    Moment const before = Moment(needed.date()) + quantities::days(-1);
    for (engine::HatchPlan const& hatch : plan.hatches) {
        Moment const begins((hatch.hatch.date + first_age(hatch)).date());
        if (first_age(hatch) > hatch.hatch.first_age && before < begins) return std::max(begins, before);
    }
    return before;
}

std::string feed_event_words(ShoppingItem const& item, Plan const& plan) {
    auto const measures = plan.farm.measures;
    engine::Purchase const& feed = *std::get<engine::Purchase const*>(item.what);
    std::string words = count_words(item, plan.farm);
    if (feed.bag) words += " of " + print(*feed.bag, measures);
    if (feed.safe_cost) words += ", " + print(*feed.safe_cost, plan.farm.currency);
    words += ": " + print(feed.need, measures) + " to be eaten, " + print(feed.band.p95, measures) +
             " by hungry birds. Needed from " + feed.first_needed.day_year() + " to " + feed.last_needed.day_year() +
             ".";
    auto const& keeps = plan.farm.feeds.at(feed.key).keeps;
    if (keeps && feed.last_needed - feed.first_needed > *keeps) {
        words += " It keeps " + print(*keeps) + ": buy what is eaten later nearer the time.";
    }
    return words;
}

/// What an event says of a supplement, bedding or disinfectant: the words of the list, and the price.
std::string other_event_words(ShoppingItem const& item, domain::Farm const& farm) {
    std::string words = count_words(item, farm) + ", " + price_words(item.cost, farm) + ": " + what_words(item, farm) +
                        ". Needed by " + item.first.day_year() + ".";
    if (item.sort == ShoppingItem::Sort::supplement) words += " What is on hand is not known.";
    return words;
}

/// The sort and the key: what makes the event the same when it is made again.
std::string identity(ShoppingItem const& item) {
    switch (item.sort) {
        case ShoppingItem::Sort::feed:
            return "feed " + item.key;
        case ShoppingItem::Sort::supplement:
            return "supplement " + item.key;
        case ShoppingItem::Sort::bedding:
            return "bedding " + item.key;
        case ShoppingItem::Sort::disinfectant:
            break;
    }
    return "disinfectant " + item.key;
}

}  // namespace

void add_shopping(std::vector<Event>& events, Plan const& plan) {
    for (ShoppingItem const& item : engine::shopping_list(plan)) {
        if (item.none) continue;
        bool const feed = item.sort == ShoppingItem::Sort::feed;
        std::string const summary =
            feed ? "Buy " + count_words(item, plan.farm) + " of " + item.title : "Have " + item.title;
        events.push_back({"", "Buy", "", identity(item), day_to_buy(item.first, plan), summary + " by tonight",
                          feed ? feed_event_words(item, plan) : other_event_words(item, plan.farm)});
    }
}

}  // namespace cropful::reports
