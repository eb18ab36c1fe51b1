#include "engine/trip_search.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/whole.hpp"
#include "engine/buying_parts.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double weight_step = 1e-6;  // kg; shelves that differ by less are the same

/// What keeps at least to a day.
double as_fresh(Shelf const& shelf, int last) {
    double sum = 0;
    for (Lot const& lot : shelf) sum += lot.last >= last ? lot.weight : 0;
    return sum;
}

}  // namespace

TripSearch::TripSearch(Buying const& buying, std::vector<Eating> const& eating, std::vector<BagTable> const& tables,
                       TripBounds const& bounds)
    : buying_(buying),
      eating_(eating),
      tables_(tables),
      bounds_(bounds),
      keeping_(in_money(buying.keeping * days(1) * kilograms(1))),
      may_waste_(keeping_ == 0 && !buying.holds) {}

TripSearch::Found TripSearch::run(std::size_t labels, double most, double most_work) {
    most_ = most;
    cut_ = no_way;
    work_ = 0;
    labels_.clear();
    many_ = 4 * std::max<std::size_t>(labels, 1);
    mornings_.assign(at(bounds_.horizon() + 1), {});
    crowded_.assign(mornings_.size(), no_way);
    Label start{-1, 0, 0, {}, 0, {}};
    for (std::size_t i = 0; i < eating_.size(); ++i) {
        double const on_hand = in_kilograms(buying_.feeds[i].on_hand);
        start.shelves.push_back(on_hand > 0 ? Shelf{{eating_[i].last(0), on_hand}} : Shelf{});
    }
    labels_.push_back(std::move(start));
    for (int next = bounds_.next(-1); next <= bounds_.horizon(); next = bounds_.next(next)) expand(0, next);
    for (int day = bounds_.next(-1); day < bounds_.horizon(); day = bounds_.next(day)) {
        std::size_t const first = labels_.size();
        settle(day, labels);
        for (std::size_t i = first; i < labels_.size(); ++i) {
            for (int next = bounds_.next(day); next <= bounds_.horizon(); next = bounds_.next(next)) {
                if (labels > 0 || next == bounds_.best_next(day)) expand(i, next);
            }
            if (labels > 0 && work_ > most_work) return {no_way, {}, false};
        }
    }
    Found found;
    auto const& last = mornings_.back();
    if (last.empty()) return found;
    auto const cheaper = [](auto const& a, auto const& b) { return a.second.cost < b.second.cost; };
    Label const* label = &std::min_element(last.begin(), last.end(), cheaper)->second;
    found.cost = label->cost;
    found.proven = cut_ >= found.cost - least_money;
    for (; label->parent != 0; label = &labels_[label->parent]) {
        found.loads.push_back({labels_[label->parent].day, label->entries});
    }
    std::reverse(found.loads.begin(), found.loads.end());
    return found;
}

/// The least a label comes to in the end.
double TripSearch::bound(Label const& label) const { return label.cost + label.bags_to_come + bounds_.from(label.day); }

/// From a label to the next trip, in every way that may be worth it.
void TripSearch::expand(std::size_t number, int next) {
    ++work_;
    Label const& label = labels_[number];
    bool const bought = label.day >= 0;
    double const trip = bought ? bounds_.trip(label.day) + bounds_.keeping(label.day, next) : 0;
    if (label.cost + trip + label.bags_to_come + bounds_.from(next) > most_ + least_money) return;
    std::vector<std::vector<Option>> all;
    for (std::size_t i = 0; i < eating_.size(); ++i) {
        all.push_back(options(label, i, next));
        work_ += static_cast<double>(all.back().size());
        if (!all.back().empty()) continue;
        if (next == bounds_.next(label.day)) obstacle_ = Obstacle{Obstacle::Why::stale, label.day, i};
        return;
    }
    if (join(number, next, all) || !bought || next != bounds_.next(label.day)) return;
    obstacle_ = Obstacle{Obstacle::Why::room, label.day, bulkiest(all)};
}

/// The feed that takes most room at the least.
std::size_t TripSearch::bulkiest(std::vector<std::vector<Option>> const& options) {
    std::vector<double> least;
    for (auto const& some : options) {
        least.push_back(no_way);
        for (Option const& option : some) least.back() = std::min(least.back(), option.weight);
    }
    return static_cast<std::size_t>(std::max_element(least.begin(), least.end()) - least.begin());
}

/// Entries of a feed's table that may be worth buying on a label's trip.
std::vector<std::size_t> TripSearch::choices(Label const& label, std::size_t feed, int next) const {
    Eating const& eating = eating_[feed];
    BagTable const& table = tables_[feed];
    Shelf const& shelf = label.shelves[feed];
    int const from = std::max(label.day, 0), cover = next == 0 ? 0 : bounds_.cover(next);
    double const missing = eating.missing(shelf, from, cover);
    if (label.day < 0) return missing > 0 ? std::vector<std::size_t>{} : std::vector<std::size_t>{0};
    int const stale = std::min(eating.last(label.day), bounds_.horizon() - 1) + 1;
    if (missing > 0 && stale < cover && eating.between(stale, cover) > not_missed) return {};
    std::size_t const first = table.at_least(missing);
    double const usable = eating.missing(shelf, from, stale);
    std::vector<std::size_t> chosen;
    double cheapest = no_way;
    bool const may_be_left = may_waste_ || stale == bounds_.horizon();
    for (std::size_t const entry : table.worth(first, may_waste_)) {
        bool const too_much = table.weight(entry) > usable + not_missed;
        if (too_much && !may_be_left) break;
        chosen.push_back(entry);
        cheapest = std::min(cheapest, table.cost(entry));
        if (too_much) break;
    }
    // What would grow too old is bought only where less does not do, or costs more.
    for (std::size_t i = std::max(first, table.at_least(usable + 2 * not_missed));
         i < table.size() && (chosen.empty() || table.cost(table.cheapest_from(i)) < cheapest - least_money); ++i) {
        if (!chosen.empty() && table.cost(i) >= cheapest - least_money) continue;
        cheapest = std::min(cheapest, table.cost(i));
        chosen.push_back(i);
    }
    return chosen;
}

std::vector<TripSearch::Option> TripSearch::options(Label const& label, std::size_t feed, int next) const {
    Eating const& eating = eating_[feed];
    BagTable const& table = tables_[feed];
    int const from = std::max(label.day, 0);
    std::vector<Option> all;
    for (std::size_t const entry : choices(label, feed, next)) {
        Shelf shelf = label.shelves[feed];
        if (table.weight(entry) > 0) shelf.push_back({eating.last(label.day), table.weight(entry)});
        double kept = 0;
        Option option{entry, eating.eat(shelf, from, next, kept), weight(shelf), 0, 0};
        option.cost = table.cost(entry) + keeping_ * kept;
        option.bags_to_come = table.least_cost(eating.missing(option.left, next, bounds_.horizon()));
        all.push_back(std::move(option));
    }
    std::stable_sort(all.begin(), all.end(),
                     [](Option const& a, Option const& b) { return a.comes_to() < b.comes_to(); });
    return all;
}

/// Every choice of an option for each feed that fits the store; whether there is one.
bool TripSearch::join(std::size_t number, int next, std::vector<std::vector<Option>> const& options) {
    std::size_t const feeds = options.size();
    Label const& from = labels_[number];
    bool const bought = from.day >= 0;
    double const room = buying_.holds && bought ? in_kilograms(*buying_.holds) + not_missed : no_way;
    std::vector<double> least(feeds + 1, bounds_.from(next));  // of the feeds from each on, and what comes after
    for (std::size_t i = feeds; i-- > 0;) least[i] = least[i + 1] + options[i].front().comes_to();
    bool fits = false;
    std::size_t ways = 0;
    std::vector<Option const*> picked(feeds);
    auto const pick = [&](auto const& self, std::size_t feed, double cost, double to_come, double stock) -> void {
        if (feed == feeds) {
            fits = true;
            ++ways;
            ++work_;
            Label label{next, cost, to_come, {}, number, {}};
            bool empty = true;
            for (Option const* option : picked) {
                label.shelves.push_back(option->left);
                label.entries.push_back(option->entry);
                empty = empty && option->entry == 0;
            }
            if (!bought || !empty) place(std::move(label));
            return;
        }
        for (Option const& option : options[feed]) {
            double const bound = cost + to_come + option.comes_to() + least[feed + 1];
            if (bound > most_ + least_money || bound > crowded_[at(next)] || ways > many_) {
                if (bound <= most_ + least_money) cut_ = std::min(cut_, bound);
                fits = true;  // for all that is known
                return;
            }
            if (stock + option.weight > room) continue;
            picked[feed] = &option;
            self(self, feed + 1, cost + option.cost, to_come + option.bags_to_come, stock + option.weight);
        }
    };
    pick(pick, 0, from.cost + (bought ? bounds_.trip(from.day) : 0), 0, 0);
    return fits;
}

/// Of ways that stand alike the cheapest stays.
void TripSearch::place(Label&& label) {
    Key key;
    for (Shelf const& shelf : label.shelves) {
        for (Lot const& lot : shelf)
            key.emplace_back(lot.last, whole_number<long long>(std::round(lot.weight / weight_step)));
        key.emplace_back(-1, 0);
    }
    if (label.day == bounds_.horizon()) key.clear();
    auto const [place, added] = mornings_[at(label.day)].try_emplace(std::move(key), label);
    if (!added && label.cost < place->second.cost) place->second = std::move(label);
    if (mornings_[at(label.day)].size() > 2 * many_) thin_out(label.day);
}

/// Cuts off the worse half of the ways to stand on a day, and all that are no better from then on.
void TripSearch::thin_out(int day) {
    Morning& morning = mornings_[at(day)];
    std::vector<double> bounds;
    for (auto const& [key, label] : morning) bounds.push_back(bound(label));
    auto const middle = bounds.begin() + static_cast<std::ptrdiff_t>(many_);
    std::nth_element(bounds.begin(), middle, bounds.end());
    double const most = crowded_[at(day)] = *middle;
    std::erase_if(morning, [&](auto const& way) { return bound(way.second) > most; });
    if (morning.size() < bounds.size()) cut_ = std::min(cut_, most);
}

/// Whether whoever stands like `than` can do all that one who stands like `label` can for no more money: what it lacks
/// it buys today, and what it has beyond costs keeping to the end at the most.
bool TripSearch::is_no_better(Label const& label, Label const& than) const {
    double extra = than.cost - label.cost;
    for (std::size_t i = 0; i < label.shelves.size() && extra <= least_money; ++i) {
        Shelf const &its = label.shelves[i], &other = than.shelves[i];
        double lacks = 0;
        for (Lot const& lot : its) lacks = std::max(lacks, as_fresh(its, lot.last) - as_fresh(other, lot.last));
        double more = weight(other) - weight(its);
        if (lacks > not_missed) {
            if (tables_[i].at_least(lacks) == tables_[i].size()) return false;
            std::size_t const entry = tables_[i].cheapest(lacks);
            extra += tables_[i].cost(entry);
            more += tables_[i].weight(entry);
        }
        if (may_waste_) continue;
        more += eating_[i].wasted(its, label.day);
        if (more <= not_missed) continue;
        if (buying_.holds) return false;
        extra += keeping_ * more * (bounds_.horizon() - label.day);
    }
    return extra <= least_money;
}

/// Moves the ways to stand on a day that are worth going on from to `labels_`.
void TripSearch::settle(int day, std::size_t labels) {
    std::vector<Label> ways;
    for (auto& [key, label] : mornings_[at(day)]) ways.push_back(std::move(label));
    mornings_[at(day)].clear();
    std::stable_sort(ways.begin(), ways.end(), [&](Label const& a, Label const& b) { return bound(a) < bound(b); });
    std::size_t const first = labels_.size();
    for (Label& label : ways) {
        auto const no_better = [&](Label const& other) {
            work_ += 0.1;  // of the time it takes to go on from one
            return is_no_better(label, other);
        };
        if (std::any_of(labels_.begin() + static_cast<std::ptrdiff_t>(first), labels_.end(), no_better)) continue;
        if (labels_.size() - first < std::max<std::size_t>(labels, 1)) {
            labels_.push_back(std::move(label));
        } else {
            cut_ = std::min(cut_, bound(label));
        }
    }
}

}  // namespace cropful::engine
