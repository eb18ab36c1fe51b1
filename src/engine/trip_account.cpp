#include "engine/trip_account.hpp"

#include <algorithm>

#include "engine/buying_parts.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// A lot with what was paid for it.
struct Paid {
    int last;
    Mass amount;
    MoneyPerMass price;
};

/// One feed's way through the days.
class Bin {
  public:
    Bin(FeedToBuy const& feed, std::size_t number) : feed_(feed), number_(number) {
        if (!(feed.on_hand > kilograms(0))) return;
        auto const price = feed.bags.empty() ? MoneyPerMass{} : feed.bags.front().price / feed.bags.front().size;
        lots_.push_back({last(0), feed.on_hand, price});
    }
    void throw_old(int day, std::vector<Waste>& waste) {
        while (!lots_.empty() && lots_.front().last < day) {
            Paid const& lot = lots_.front();
            if (in_kilograms(lot.amount) > not_missed) {
                waste.push_back({number_, day, lot.amount, lot.amount * lot.price});
            }
            lots_.erase(lots_.begin());
        }
    }
    void bring(int day, Mass amount, Money cost) { lots_.push_back({last(day), amount, cost / amount}); }
    void feed(int day) {
        Mass need = feed_.needs[at(day)];
        for (Paid& lot : lots_) {
            Mass const taken = std::min(need, lot.amount);
            lot.amount -= taken;
            need -= taken;
        }
        std::erase_if(lots_, [](Paid const& lot) { return in_kilograms(lot.amount) <= 0; });
    }
    [[nodiscard]] Mass content() const {
        Mass sum = kilograms(0);
        for (Paid const& lot : lots_) sum += lot.amount;
        return sum;
    }

  private:
    [[nodiscard]] int last(int day) const { return feed_.keeps ? day + *feed_.keeps - 1 : for_ever; }
    FeedToBuy const& feed_;
    std::size_t number_;
    std::vector<Paid> lots_;  // the oldest first
};

}  // namespace

std::vector<BagTable> bag_tables(Buying const& buying, std::vector<Eating> const& eating) {
    std::vector<BagTable> tables;
    std::size_t ways = BagTable::most_ways;  // that are left for the feeds to come
    for (std::size_t i = 0; i < eating.size(); ++i) {
        double most = 0;
        for (int day = 0; day < eating[i].horizon(); ++day) {
            int const end = std::min(eating[i].last(day), eating[i].horizon() - 1) + 1;
            most = std::max(most, eating[i].between(day, end));
        }
        ways -= tables.emplace_back(buying.feeds[i].bags, most, ways).size();
    }
    return tables;
}

Shopping account(Buying const& buying, std::vector<BagTable> const& tables, std::vector<Load> const& loads) {
    Shopping all{{}, {}, {}, money(0), money(0), money(0), true};
    std::vector<Bin> bins;
    for (std::size_t i = 0; i < buying.feeds.size(); ++i) bins.emplace_back(buying.feeds[i], i);
    auto load = loads.begin();
    for (int day = 0; day < static_cast<int>(buying.trips.size()); ++day) {
        for (Bin& bin : bins) bin.throw_old(day, all.waste);
        if (load != loads.end() && load->day == day) {
            Trip trip{day, *buying.trips[at(day)], {}};
            for (std::size_t i = 0; i < bins.size(); ++i) {
                std::size_t const entry = load->entries[i];
                if (entry == 0) continue;
                FeedBought const bought{i, tables[i].bags(entry), kilograms(tables[i].weight(entry)),
                                        money(tables[i].cost(entry))};
                bins[i].bring(day, bought.amount, bought.cost);
                all.bag_cost += bought.cost;
                trip.feeds.push_back(bought);
            }
            all.trip_cost += trip.cost;
            all.trips.push_back(std::move(trip));
            ++load;
        }
        for (Bin& bin : bins) {
            bin.feed(day);
            all.keeping_cost += buying.keeping * days(1) * bin.content();
        }
    }
    for (Bin const& bin : bins) all.left.push_back(bin.content());
    return all;
}

}  // namespace cropful::engine
