#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/buy_text.hpp"
#include "cropful/reports/page.hpp"
#include "cropful/reports/words.hpp"
#include "reports/agenda.hpp"
#include "reports/shopping.hpp"

namespace cropful::reports {

namespace {

using engine::Moment;
using engine::Plan;
using quantities::print;

/// The whole day before.
Moment day_before(Moment needed) { return Moment(needed.date()) + quantities::days(-1); }

std::string feed_event_words(engine::Purchase const& feed, Plan const& plan) {
    auto const measures = plan.farm.measures;
    std::string words = count_words(feed, plan);
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
std::string other_words(ShoppingRow const& row) {
    std::string words = row.count + ", " + row.price + ": " + row.words + ". Needed by " + row.first.day_year() + ".";
    if (row.sort == "supplement") words += " What is on hand is not known.";
    return words;
}

}  // namespace

void add_shopping(std::vector<Event>& events, Plan const& plan) {
    for (ShoppingRow const& row : shopping_rows(plan)) {
        if (row.none) continue;
        std::string summary = "Have " + row.title + " by tonight", words;
        if (row.sort == "feed") {
            summary = "Buy " + row.count + " of " + row.title + " by tonight";
            auto const feed = std::find_if(plan.feeds.begin(), plan.feeds.end(),
                                           [&](engine::Purchase const& one) { return one.key == row.key; });
            words = feed_event_words(*feed, plan);
        } else {
            words = other_words(row);
        }
        events.push_back({"", "Buy", "", row.sort + " " + row.key, day_before(row.first), summary, words});
    }
}

}  // namespace cropful::reports
