#include "engine/bag_table.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "cropful/fault.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

}  // namespace

double BagTable::Size::price(int count) const {
    double price = prices.front().price;
    for (Price const& one : prices) {
        if (one.from <= count) price = one.price;
    }
    return price;
}

BagTable::BagTable(std::vector<BagOffer> const& offers, double most, std::size_t ways) {
    std::map<double, std::map<int, double>> prices;
    for (BagOffer const& offer : offers) prices[in_kilograms(offer.size)][offer.from] = in_money(offer.price);
    double limit = most;
    rate_ = never;
    for (auto const& [weight, by_count] : prices) {
        Size size{weight, {}};
        for (auto const& [from, price] : by_count) size.prices.push_back({from, price});
        double const break_weight = weight * size.prices.back().from;
        limit = std::max(limit, most + break_weight + weight);
        bulk_ += 2 * break_weight;
        rate_ = std::min(rate_, size.prices.back().price / weight);
        sizes_.push_back(std::move(size));
    }
    put_together(0, {0, 0, {}}, limit, ways);
    drop_dearer();
    cheapest_.resize(entries_.size());
    for (std::size_t i = entries_.size(); i-- > 0;) {
        bool const last = i + 1 == entries_.size();
        cheapest_[i] = !last && cost(cheapest_[i + 1]) <= cost(i) ? cheapest_[i + 1] : i;
    }
}

void BagTable::put_together(std::size_t size, Entry const& so_far, double limit, std::size_t ways) {
    if (size == sizes_.size()) {
        if (entries_.size() == ways) {
            throw NoAnswer("bags can be put together in more than a million ways; state fewer or larger sizes");
        }
        entries_.push_back(so_far);
        return;
    }
    for (int count = 0; so_far.weight + sizes_[size].weight * count <= limit; ++count) {
        Entry next = so_far;
        next.weight += sizes_[size].weight * count;
        next.cost += sizes_[size].price(count) * count;
        next.counts.push_back(count);
        put_together(size + 1, next, limit, ways);
    }
}

/// Of entries that weigh the same the cheapest stays.
void BagTable::drop_dearer() {
    std::stable_sort(entries_.begin(), entries_.end(), [](Entry const& a, Entry const& b) {
        return std::abs(a.weight - b.weight) > least_weight ? a.weight < b.weight : a.cost < b.cost;
    });
    auto const same = [](Entry const& a, Entry const& b) { return std::abs(a.weight - b.weight) <= least_weight; };
    entries_.erase(std::unique(entries_.begin(), entries_.end(), same), entries_.end());
    entries_.shrink_to_fit();
}

std::vector<BagsBought> BagTable::bags(std::size_t entry) const {
    std::vector<BagsBought> all;
    for (std::size_t i = 0; i < sizes_.size(); ++i) {
        int const count = entries_[entry].counts[i];
        if (count > 0) all.push_back({kilograms(sizes_[i].weight), count, money(sizes_[i].price(count) * count)});
    }
    std::reverse(all.begin(), all.end());  // the largest first
    return all;
}

std::size_t BagTable::at_least(double weight) const {
    auto const lighter = [](Entry const& entry, double x) { return entry.weight < x - least_weight; };
    return static_cast<std::size_t>(std::lower_bound(entries_.begin(), entries_.end(), weight, lighter) -
                                    entries_.begin());
}

double BagTable::least_cost(double weight) const {
    std::size_t const entry = at_least(weight);
    double const by_weight = rate_ * weight;
    return entry < size() ? std::max(by_weight, cost(cheapest_[entry])) : by_weight;
}

double BagTable::exact_cost(double weight) const {
    std::size_t const entry = at_least(weight);
    return entry < size() && entries_[entry].weight <= weight + least_weight ? cost(entry) : never;
}

std::vector<std::size_t> const& BagTable::worth(std::size_t first, bool may_waste) const {
    auto& all = worth_[may_waste ? 1 : 0];
    all.resize(size() + 1);
    auto& kept = all[first];
    if (!kept.empty()) return kept;
    for (std::size_t i = first; i < size() && (kept.empty() || weight(i) <= weight(first) + bulk_); ++i) {
        if (may_waste && cost(cheapest_[i]) < cost(i) - least_money) continue;
        bool const later = std::any_of(kept.begin(), kept.end(), [&](std::size_t lighter) {
            double const rest = weight(i) - weight(lighter);
            double const then = may_waste ? cost(cheapest(rest)) : exact_cost(rest);
            return cost(lighter) + then <= cost(i) + least_money;
        });
        if (!later) kept.push_back(i);
    }
    return kept;
}

}  // namespace cropful::engine
