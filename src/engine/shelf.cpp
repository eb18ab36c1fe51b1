#include "engine/shelf.hpp"

#include <algorithm>

namespace cropful::engine {

using namespace quantities;

double weight(Shelf const& shelf) {
    double sum = 0;
    for (Lot const& lot : shelf) sum += lot.weight;
    return sum;
}

Eating::Eating(FeedToBuy const& feed) : keeps_(feed.keeps.value_or(for_ever)), total_{0}, area_{0} {
    for (Mass const& need : feed.needs) {
        total_.push_back(total_.back() + in_kilograms(need));
        area_.push_back(area_.back() + total_.back());
    }
}

int Eating::within(int day) const { return std::min(day, horizon()); }

double Eating::missing(Shelf const& shelf, int from, int to) const {
    double eaten = total_[place(from)];
    for (Lot const& lot : shelf) {
        double const by_then = total_[place(std::clamp(lot.last + 1, from, to))];
        if (by_then > eaten) eaten += std::min(lot.weight, by_then - eaten);
    }
    double const lacks = total_[place(to)] - eaten;
    return lacks > not_missed ? lacks : 0;
}

double Eating::wasted(Shelf const& shelf, int from) const {
    double eaten = total_[place(from)], waste = 0;
    for (Lot const& lot : shelf) {
        double const by_then = total_[place(std::clamp(lot.last + 1, from, horizon()))];
        double const taken = std::clamp(by_then - eaten, 0.0, lot.weight);
        eaten += taken;
        if (lot.last + 1 < horizon()) waste += lot.weight - taken;
    }
    return waste;
}

Shelf Eating::eat(Shelf const& shelf, int from, int to, double& kept) const {
    kept += weight(shelf) * (to - from) - (area_[place(to)] - area_[place(from)]) + total_[place(from)] * (to - from);
    double eaten = total_[place(from)];
    double ahead = 0;
    Shelf left;
    for (Lot const& lot : shelf) {
        int const end = std::clamp(lot.last + 1, from, to);
        double const taken = std::clamp(total_[place(end)] - eaten, 0.0, lot.weight);
        eaten += taken;
        double const rest = lot.weight - taken;
        if (rest <= not_missed) continue;
        if (lot.last < to) {
            kept -= rest * (to - end);
            continue;
        }
        ahead += rest;
        bool const in_time = lot.last + 1 >= horizon() || between(to, within(lot.last + 1)) >= ahead - not_missed;
        int const last = in_time ? for_ever : lot.last;
        if (!left.empty() && left.back().last == last) {
            left.back().weight += rest;
        } else {
            left.push_back({last, rest});
        }
    }
    return left;
}

}  // namespace cropful::engine
