#include <algorithm>

#include "cropful/domain/ranges.hpp"
#include "cropful/engine/agenda.hpp"
#include "cropful/engine/shopping.hpp"
#include "cropful/fault.hpp"
#include "cropful/quantities/make.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// What is brought home: whole bags where it is sold in them.
std::optional<Mass> brought_home(ShoppingItem const& item) {
    auto const* const* feed = std::get_if<Purchase const*>(&item.what);
    if (feed == nullptr) return std::nullopt;
    auto const& bag = (*feed)->bag;
    return bag && item.packs ? *bag * static_cast<double>(*item.packs) : (*feed)->short_by();
}

/// Whether a product is being given already, and so is there.
bool is_given(Plan const& plan, ShoppingItem const& item, Moment at) {
    if (item.sort != ShoppingItem::Sort::supplement) return false;
    return ranges::any_of(plan.hatches, [&](HatchPlan const& hatch) {
        return ranges::any_of(hatch.mixes, [&](Mix const& mix) {
            return mix.supplement == item.key && hatch.hatch.date + mix.from < at && at < hatch.hatch.date + mix.to;
        });
    });
}

/// The day before each thing is needed, never before a moment.
void add_items(std::vector<Fetch>& all, std::vector<ShoppingItem> const& items, Moment earliest) {
    for (ShoppingItem const& item : items) {
        if (item.none) continue;
        Moment const day = std::max(Moment(item.first.date()) + days(-1), Moment(earliest.date()));
        all.push_back({day, item.key, item.title, item.packs, brought_home(item), item.first});
    }
}

void add_trips(std::vector<Fetch>& all, TripPlan const& trips, domain::Farm const& farm) {
    for (Trip const& trip : trips.shopping.trips) {
        Moment const on = trips.date(trip.day);
        for (FeedBought const& bought : trip.feeds) {
            std::string const& key = trips.feeds[bought.feed];
            int bags = 0;
            for (BagsBought const& some : bought.bags) bags += some.count;
            all.push_back({on, key, farm.feeds.at(key).title, bags, bought.amount, on + days(trips.buying.lead)});
        }
    }
    for (PacksBought const& packs : trips.packs) {
        if (!packs.trip) continue;
        all.push_back({trips.date(trips.shopping.trips[*packs.trip].day), packs.supplement,
                       farm.supplements.at(packs.supplement).title, packs.packs, std::nullopt, packs.by});
    }
}

/// What no trip brings.
std::vector<ShoppingItem> beside(TripPlan const& trips, std::vector<ShoppingItem> items) {
    std::erase_if(items, [&](ShoppingItem const& item) {
        bool const by_trip = ranges::any_of(
            trips.packs, [&](PacksBought const& packs) { return packs.trip && packs.supplement == item.key; });
        return item.sort == ShoppingItem::Sort::feed || (item.sort == ShoppingItem::Sort::supplement && by_trip);
    });
    return items;
}

}  // namespace

std::vector<Fetch> fetches(Plan const& plan, Moment earliest) {
    std::vector<Fetch> all;
    auto items = shopping_list(plan);
    if (plan.farm.store) {
        try {
            TripPlan const trips = plan_trips(plan);
            add_trips(all, trips, plan.farm);
            items = beside(trips, std::move(items));
        } catch (NoAnswer const&) {
            all.clear();  // bags without a size or price
        }
    }
    std::erase_if(items, [&](ShoppingItem const& item) { return is_given(plan, item, earliest); });
    add_items(all, items, earliest);
    return all;
}

}  // namespace cropful::engine
