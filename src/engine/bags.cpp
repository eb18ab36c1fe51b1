#include "engine/bags.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/fault.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/rounding.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double most_packs = 1e7;

int bags_for(domain::Feed const& feed, Mass need) {
    return feed.bag ? whole(ratio((need + feed.spare - feed.on_hand) / *feed.bag)) : 0;
}

/// Feed sold loose costs what is missing by weight.
std::optional<Money> loose_cost(domain::Feed const& feed, Mass missing) {
    if (!(missing > kilograms(0))) return money(0);
    return feed.by_weight ? std::optional<Money>(*feed.by_weight * missing) : std::nullopt;
}

/// What becomes of one feed over all hatches.
FeedAccount account_of(Plan const& plan, std::string const& feed) {
    FeedAccount sum{};
    for (HatchPlan const& hatch : plan.hatches) {
        auto const found = hatch.account.find(feed);
        if (found == hatch.account.end()) continue;
        sum.put_in += found->second.put_in;
        sum.stays_behind += found->second.stays_behind;
        sum.held += found->second.held;
        sum.taken += found->second.taken;
    }
    return sum;
}

void count_feed(Plan& plan, domain::Feed const& feed, std::map<std::string, Band<Mass>> const& needs) {
    std::optional<Purchase> purchase;
    Mass need = kilograms(0);
    int bought = 0;
    Mass loose = kilograms(0);  // the same of feed without bags
    FeedAccount const account = account_of(plan, feed.key);
    Mass const beside = account.stays_behind - account.held;  // what hoppers take beyond what is eaten
    for (HatchPlan& hatch : plan.hatches) {
        for (FeedNeed& part : hatch.feeds) {
            if (part.feed != feed.key) continue;
            need += part.amount;
            part.bags = std::max(0, bags_for(feed, need + beside) - bought);
            bought += part.bags;
            if (feed.bag) part.cost = cost(feed.price, part.bags);
            Mass const missing = std::max(loose, need + beside + feed.spare - feed.on_hand);
            if (feed.by_weight) part.cost = loose_cost(feed, missing - loose);
            loose = missing;
            Moment const from = hatch.hatch.date + part.from, to = hatch.hatch.date + part.to;
            if (!purchase) {
                purchase = {.key = feed.key,
                            .title = feed.title,
                            .need = {},
                            .band = needs.at(feed.key),
                            .on_hand = feed.on_hand,
                            .spare = feed.spare,
                            .put_in = account.put_in,
                            .stays_behind = account.stays_behind,
                            .in_hoppers = account.held,
                            .bag = feed.bag,
                            .cost = {},
                            .safe_cost = {},
                            .first_needed = from,
                            .last_needed = to};
            }
            purchase->first_needed = std::min(purchase->first_needed, from);
            purchase->last_needed = std::max(purchase->last_needed, to);
        }
    }
    if (!purchase) return;
    purchase->need = need;
    purchase->bags = bought;
    Band<Mass> const& band = purchase->band;
    purchase->safe_bags = {bags_for(feed, band.p05 + beside), bags_for(feed, band.p50 + beside),
                           bags_for(feed, band.p95 + beside)};
    if (feed.bag) {
        purchase->cost = cost(feed.price, bought);
        purchase->safe_cost = cost(feed.price, purchase->safe_bags.p95);
    }
    if (feed.by_weight) {
        purchase->cost = loose_cost(feed, need + beside + feed.spare - feed.on_hand);
        purchase->safe_cost = loose_cost(feed, purchase->short_by());
    }
    plan.feeds.push_back(std::move(*purchase));
}

/// Adds `more` to a sum that stays unknown once a part is.
template <class Amount>
void add_amount(std::optional<Amount>& sum, std::optional<Amount> const& more) {
    sum = sum && more ? std::optional<Amount>(*sum + *more) : std::nullopt;
}

std::optional<int> packs_of(domain::Supplement const& supplement, std::optional<Mass> const& weight,
                            std::optional<Volume> const& volume) {
    if (supplement.pack_volume && volume) return whole(ratio(*volume / *supplement.pack_volume));
    if (supplement.pack && weight) return whole(ratio(*weight / *supplement.pack));
    return std::nullopt;
}

void count_supplement(Plan& plan, domain::Supplement const& supplement) {
    std::optional<SupplementPurchase> purchase;
    for (HatchPlan const& hatch : plan.hatches) {
        for (Mix const& mix : hatch.mixes) {
            if (mix.supplement != supplement.key || mix.batches.empty()) continue;
            Moment const first = mix.batches.front().at;
            if (!purchase) {
                purchase = {supplement.key, supplement.title, kilograms(0), litres(0), {}, {}, first};
            }
            SupplementPurchase& bought = *purchase;
            add_amount(bought.by_weight, mix.total.by_weight);
            add_amount(bought.by_volume, mix.total.by_volume);
            bought.first_needed = std::min(bought.first_needed, first);
        }
    }
    if (!purchase) return;
    SupplementPurchase& bought = *purchase;
    bought.packs = packs_of(supplement, bought.by_weight, bought.by_volume);
    if (bought.packs) bought.cost = cost(supplement.price, *bought.packs);
    plan.supplements.push_back(std::move(bought));
}

void add_costs(Plan& plan, std::optional<Money> const& cost, std::optional<Money> const& safe_cost) {
    plan.cost += cost.value_or(money(0));
    plan.safe_cost += safe_cost.value_or(money(0));
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

void count_bags(Plan& plan, std::map<std::string, Band<Mass>> const& needs,
                std::map<std::string, StoreCount> const& store) {
    for (auto& [key, feed] : plan.farm.feeds) {
        auto const found = store.find(key);
        if (found == store.end()) continue;
        feed.on_hand = std::max(kilograms(0), found->second.amount - account_of(plan, key).taken);
    }
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
    for (SupplementPurchase const& one : plan.supplements) add_costs(plan, one.cost, one.cost);
    for (BeddingPurchase const& one : plan.readying.bedding) add_costs(plan, one.cost, one.cost);
    for (DisinfectantPurchase const& one : plan.readying.disinfectants) add_costs(plan, one.cost, one.cost);
}

}  // namespace cropful::engine
