#include "engine/crowd.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/whole.hpp"
#include "engine/rounding.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

std::vector<Duration> crowded_ages(Flock const& flock, std::vector<domain::Room> const& rooms, Duration from,
                                   Duration to) {
    std::vector<Duration> ages{from};
    auto const add = [&](Duration age) {
        if (age > from && age < to) ages.push_back(age);
    };
    for (double const age : flock.breaks()) add(days(age));
    for (domain::Room const& room : rooms) add(room.from);
    return ages;
}

}  // namespace

Crowd::Crowd(HatchModel const& model, domain::Brooder const& sort, domain::Residence const& time)
    : rooms_(domain::rooms_of(sort, model.hatch().kind)),
      flock_(model.flock()),
      from_(time.from),
      to_(time.to),
      ages_(crowded_ages(flock_, rooms_, from_, to_)) {
    if (model.hatch().housing.empty()) return;
    Lodging const* lodging = lodging_at(model.lodgings(), from_);
    if (lodging == nullptr) return;
    reserved_ = lodging->houses;
    sure_ = lodging->sure;
}

int Crowd::needs() const {
    if (reserved_) return *reserved_;
    double most = 0;
    for (Duration const& age : ages_) most = std::max(most, ratio(alive(age) / held(age)));
    return whole_number(std::ceil(most - rounding));
}

Heads Crowd::held(Duration age) const {
    Heads birds = rooms_.front().birds;
    for (domain::Room const& room : rooms_) {
        if (room.from <= age) birds = room.birds;
    }
    return birds;
}

double Crowd::filled(Duration age) const { return sure_ * ratio(alive(age) / held(age)); }

Heads Crowd::left_over(int houses) const {
    Heads most = birds(0);
    for (Duration const& age : ages_) most = std::max(most, alive(age) - held(age) * static_cast<double>(houses));
    return most;
}

}  // namespace cropful::engine
