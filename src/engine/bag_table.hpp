#pragma once

#include <array>
#include <vector>

#include "cropful/engine/trips.hpp"

namespace cropful::engine {

/// Whole bags cannot be told apart by less, in kg; what is paid cannot, in money.
inline constexpr double least_weight = 1e-7;
inline constexpr double least_money = 1e-9;

/// Every weight that whole bags of one feed make up to a limit, lightest first, and the least each costs. In kg and
/// money.
class BagTable {
  public:
    static constexpr std::size_t most_ways = 1'000'000;
    /// Holds weights of at least `most`. Throws NoAnswer for more than so many ways to put bags together.
    BagTable(std::vector<BagOffer> const& offers, double most, std::size_t ways = most_ways);

    [[nodiscard]] std::size_t size() const { return entries_.size(); }
    [[nodiscard]] double weight(std::size_t entry) const { return entries_[entry].weight; }
    [[nodiscard]] double cost(std::size_t entry) const { return entries_[entry].cost; }
    [[nodiscard]] std::vector<BagsBought> bags(std::size_t entry) const;
    /// The lightest of at least a weight; `size()` where there is none.
    [[nodiscard]] std::size_t at_least(double weight) const;
    /// The cheapest of at least a weight, the heavier of two that cost the same.
    [[nodiscard]] std::size_t cheapest(double weight) const { return cheapest_from(at_least(weight)); }
    /// The same among an entry and all heavier ones.
    [[nodiscard]] std::size_t cheapest_from(std::size_t entry) const { return cheapest_[entry]; }
    /// Not more than what any purchases of at least this weight together cost.
    [[nodiscard]] double least_cost(double weight) const;
    /// The entries from `first` on that may be worth buying although more will be bought on the next trip: the others
    /// cost no less than a lighter one now and the rest then. With `may_waste`, feed too much does no harm; without,
    /// the rest is to be bought to the gram.
    [[nodiscard]] std::vector<std::size_t> const& worth(std::size_t first, bool may_waste) const;

  private:
    struct Entry {
        double weight;
        double cost;
        std::vector<int> counts;  // of each size
    };
    struct Price {
        int from;
        double price;
    };
    struct Size {
        double weight;
        std::vector<Price> prices;  // for more and more bags
        [[nodiscard]] double price(int count) const;
    };
    void put_together(std::size_t size, Entry const& so_far, double limit, std::size_t ways);
    void drop_dearer();
    [[nodiscard]] double exact_cost(double weight) const;
    std::vector<Size> sizes_;
    std::vector<Entry> entries_;
    std::vector<std::size_t> cheapest_;  // among the entries from each on
    double bulk_ = 0;                    // more than this above the least is never worth buying
    double rate_ = 0;                    // the least price per kg
    mutable std::array<std::vector<std::vector<std::size_t>>, 2> worth_;  // as asked for; by `may_waste`, `first`
};

}  // namespace cropful::engine
