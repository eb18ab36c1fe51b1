#include "engine/trip_bounds.hpp"

#include <algorithm>

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double fewer_trips = 1e-9;  // what settles between shoppings that cost the same

}  // namespace

TripBounds::TripBounds(Buying const& buying, std::vector<Eating> const& eating)
    : buying_(buying), eating_(eating), days_(static_cast<int>(buying.trips.size())), total_{0}, area_{0} {
    for (int day = 0; day < days_; ++day) {
        double total = 0;
        for (Eating const& feed : eating_) total += feed.between(0, day + 1);
        total_.push_back(total);
        area_.push_back(area_.back() + total);
    }
    from_.assign(buying.trips.size() + 1, no_way);
    from_.back() = 0;
    best_next_.assign(from_.size(), days_);
    for (int day = days_ - 1; day >= 0; --day) {
        if (!is_trip(day)) continue;
        double& best = from_[static_cast<std::size_t>(day)];
        for (int to = next(day); to <= days_; to = next(to)) {
            if (auto const obstacle = between(day, to)) {
                if (to == next(day)) obstacle_ = obstacle;
                break;
            }
            double const cost = trip(day) + keeping(day, to) + from(to);
            if (cost >= best) continue;
            best = cost;
            best_next_[static_cast<std::size_t>(day)] = to;
        }
    }
}

double TripBounds::keeping(int day, int next) const {
    auto const a = static_cast<std::size_t>(day), b = static_cast<std::size_t>(next);
    double const held = total_[static_cast<std::size_t>(cover(next))] * (next - day) - (area_[b] - area_[a]);
    return in_money(buying_.keeping * days(1) * kilograms(held));
}

double TripBounds::trip(int day) const { return in_money(*buying_.trips[static_cast<std::size_t>(day)]) + fewer_trips; }

int TripBounds::next(int day) const {
    do ++day;
    while (day < days_ && !is_trip(day));
    return day;
}

int TripBounds::cover(int next) const { return std::min(days_, next + buying_.lead); }

std::optional<Obstacle> TripBounds::between(int day, int next) const {
    int const end = cover(next);
    double most = 0;
    std::size_t largest = 0;
    for (std::size_t i = 0; i < eating_.size(); ++i) {
        int const last = std::min(eating_[i].last(day), end - 1);
        if (eating_[i].between(std::max(day, last + 1), end) > not_missed)
            return Obstacle{Obstacle::Why::stale, day, i};
        double const wanted = eating_[i].between(day, end);
        if (wanted > most) {
            most = wanted;
            largest = i;
        }
    }
    double const all = total_[static_cast<std::size_t>(end)] - total_[static_cast<std::size_t>(day)];
    bool const room = !buying_.holds || all <= in_kilograms(*buying_.holds) + not_missed;
    return room ? std::nullopt : std::optional(Obstacle{Obstacle::Why::room, day, largest});
}

}  // namespace cropful::engine
