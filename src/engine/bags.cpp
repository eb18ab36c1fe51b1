#include "engine/bags.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/fault.hpp"
#include "cropful/quantities/whole.hpp"

namespace cropful::engine {

namespace {

constexpr double rounding = 1e-9;  // of a bag: 12.0000000001 bags are 12

constexpr double most_packs = 1e7;

int bags_for(domain::Feed const& feed, Mass need) {
    return feed.bag ? whole(ratio((need + feed.spare - feed.on_hand) / *feed.bag)) : 0;
}

void count_feed(Plan& plan, domain::Feed const& feed, std::map<std::string, Band<Mass>> const& needs) {
    std::optional<Purchase> purchase;
    Mass need = kilograms(0);
    int bought = 0;
    for (HatchPlan& hatch : plan.hatches) {
        for (FeedNeed& part : hatch.feeds) {
            if (part.feed != feed.key) continue;
            need += part.amount;
            part.bags = bags_for(feed, need) - bought;
            bought += part.bags;
            if (feed.bag) part.cost = cost(feed.price, part.bags);
            Moment const from = hatch.hatch.date + part.from, to = hatch.hatch.date + part.to;
            if (!purchase) {
                purchase = {feed.key, feed.title, {}, needs.at(feed.key), feed.on_hand, feed.spare, feed.bag, 0, {}, {},
                            {},       from,       to};
            }
            purchase->first_needed = std::min(purchase->first_needed, from);
            purchase->last_needed = std::max(purchase->last_needed, to);
        }
    }
    if (!purchase) return;
    purchase->need = need;
    purchase->bags = bought;
    Band<Mass> const& band = purchase->band;
    purchase->safe_bags = {bags_for(feed, band.p05), bags_for(feed, band.p50), bags_for(feed, band.p95)};
    if (feed.bag) {
        purchase->cost = cost(feed.price, bought);
        purchase->safe_cost = cost(feed.price, purchase->safe_bags.p95);
    }
    plan.feeds.push_back(std::move(*purchase));
}

/// Adds `more` to a sum that stays unknown once a part is.
template <class Amount>
void add(std::optional<Amount>& sum, std::optional<Amount> const& more) {
    sum = sum && more ? std::optional<Amount>(*sum + *more) : std::nullopt;
}

void count_supplement(Plan& plan, domain::Supplement const& supplement) {
    SupplementPurchase purchase{supplement.key, supplement.title, kilograms(0), litres(0), {}, {}};
    bool used = false;
    for (HatchPlan const& hatch : plan.hatches) {
        if (!hatch.mix || hatch.mix->supplement != supplement.key || hatch.mix->batches.empty()) continue;
        used = true;
        Dose const& total = hatch.mix->total;
        add(purchase.by_weight, total.by_weight);
        add(purchase.by_volume, total.by_volume);
    }
    if (!used) return;
    if (supplement.pack && purchase.by_weight) purchase.packs = whole(ratio(*purchase.by_weight / *supplement.pack));
    if (supplement.pack_volume && purchase.by_volume) {
        purchase.packs = whole(ratio(*purchase.by_volume / *supplement.pack_volume));
    }
    if (purchase.packs) purchase.cost = cost(supplement.price, *purchase.packs);
    plan.supplements.push_back(std::move(purchase));
}

void add_cost(Plan& plan, std::optional<Money> const& cost) {
    plan.cost += cost.value_or(money(0));
    plan.safe_cost += cost.value_or(money(0));
    plan.cost_is_whole = plan.cost_is_whole && cost;
}

}  // namespace

int whole(double packs) {
    if (packs > most_packs) throw NoAnswer("more than 10 million bags or packs would be needed; check their size");
    return whole_number(std::max(std::ceil(packs - rounding), 0.0));
}

std::optional<Money> cost(std::optional<Money> price, int packs) {
    if (packs == 0) return money(0);
    return price ? std::optional<Money>(*price * static_cast<double>(packs)) : std::nullopt;
}

void count_bags(Plan& plan, std::map<std::string, Band<Mass>> const& needs) {
    for (auto const& [key, feed] : plan.farm.feeds) count_feed(plan, feed, needs);
    for (auto const& [key, supplement] : plan.farm.supplements) count_supplement(plan, supplement);
    std::stable_sort(plan.feeds.begin(), plan.feeds.end(),
                     [](Purchase const& a, Purchase const& b) { return a.first_needed < b.first_needed; });
    for (Purchase const& feed : plan.feeds) {
        plan.bags += feed.bags;
        plan.cost += feed.cost.value_or(money(0));
        plan.safe_bags += feed.safe_bags.p95;
        plan.safe_cost += feed.safe_cost.value_or(money(0));
        plan.cost_is_whole = plan.cost_is_whole && feed.cost;
    }
    for (SupplementPurchase const& one : plan.supplements) add_cost(plan, one.cost);
    for (BeddingPurchase const& one : plan.readying.bedding) add_cost(plan, one.cost);
    for (DisinfectantPurchase const& one : plan.readying.disinfectants) add_cost(plan, one.cost);
}

}  // namespace cropful::engine
