#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/mix_text.hpp"
#include "cropful/reports/page.hpp"
#include "cropful/reports/words.hpp"
#include "reports/agenda.hpp"

namespace cropful::reports {

namespace {

using engine::Moment;
using engine::Plan;
using quantities::print;

/// The whole day before.
Moment day_before(Moment needed) { return Moment(needed.date()) + quantities::days(-1); }

std::string amount_words(engine::Purchase const& feed, Plan const& plan) {
    auto const measures = plan.farm.measures;
    if (feed.bag) return plural(feed.safe_bags.p95, "bag");
    return print(feed.band.p95 + feed.spare - feed.on_hand, measures);
}

bool is_bought(engine::Purchase const& feed) {
    return feed.bag ? feed.safe_bags.p95 > 0 : feed.band.p95 + feed.spare > feed.on_hand;
}

std::string feed_words(engine::Purchase const& feed, Plan const& plan) {
    auto const measures = plan.farm.measures;
    std::string words = amount_words(feed, plan);
    if (feed.bag) words += " of " + print(*feed.bag, measures);
    if (feed.safe_cost) words += ", " + print(*feed.safe_cost, plan.farm.currency);
    words += ": " + print(feed.band.p50, measures) + " to be eaten, " + print(feed.band.p95, measures) +
             " by hungry birds. Needed from " + feed.first_needed.day_year() + " to " + feed.last_needed.day_year() +
             ".";
    auto const& keeps = plan.farm.feeds.at(feed.key).keeps;
    if (keeps && feed.last_needed - feed.first_needed > *keeps) {
        words += " It keeps " + print(*keeps) + ": buy what is eaten later nearer the time.";
    }
    return words;
}

/// When a supplement is first stirred in by any hatch; empty when none needs it.
std::optional<Moment> first_mixed(Plan const& plan, std::string const& key) {
    std::optional<Moment> first;
    for (engine::HatchPlan const& hatch : plan.hatches) {
        if (!hatch.mix || hatch.mix->supplement != key || hatch.mix->batches.empty()) continue;
        Moment const at = hatch.mix->batches.front().at;
        first = first ? std::min(*first, at) : at;
    }
    return first;
}

std::string supplement_words(engine::SupplementPurchase const& bought, Plan const& plan) {
    auto const measures = plan.farm.measures;
    std::string const amount =
        bought.by_weight ? print_small(*bought.by_weight, measures) : measure_words(*bought.by_volume, measures);
    std::string words = bought.packs ? plural(*bought.packs, "pack") + ": " : "";
    words += amount + " to be stirred in";
    if (bought.cost) words += ", " + print(*bought.cost, plan.farm.currency);
    return words + ". What is on hand is not known.";
}

}  // namespace

void add_shopping(std::vector<Event>& events, Plan const& plan) {
    for (engine::Purchase const& feed : plan.feeds) {
        if (!is_bought(feed)) continue;
        events.push_back({"", "Buy", "", "feed " + feed.key, day_before(feed.first_needed),
                          "Buy " + amount_words(feed, plan) + " of " + feed_title(plan.farm, feed.key) + " by tonight",
                          feed_words(feed, plan)});
    }
    for (engine::SupplementPurchase const& bought : plan.supplements) {
        auto const first = first_mixed(plan, bought.key);
        if (!first) continue;
        std::string const title = supplement_title(plan.farm.supplements.at(bought.key));
        events.push_back({"", "Buy", "", "supplement " + bought.key, day_before(*first),
                          "Have " + title + " by tonight", supplement_words(bought, plan)});
    }
}

}  // namespace cropful::reports
