#include "engine/flock.hpp"

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"

namespace cropful::engine {

Heads chicks(domain::Hatch const& hatch, Kind const& kind) {
    if (hatch.chicks) return *hatch.chicks;
    return birds(hatch.eggs.value_or(0) * hatch.hatch_rate.value_or(kind.hatch_rate.value));
}

Flock::Flock(domain::Hatch const& hatch, Kind const& kind)
    : mortality_(kind.mortality.curve), counted_(chicks(hatch, kind)) {
    stretches_.push_back({hatch.first_age, in_birds(counted_) / survival(hatch.first_age)});
    for (domain::Removal const& removal : hatch.removed) {
        if (removal.at < hatch.first_age) continue;  // gone before the birds were counted
        double const left = in_birds(alive(removal.at)) - in_birds(removal.birds);
        if (left < 0) {
            throw NoAnswer(hatch.name + ": " + number(in_birds(removal.birds), 0) + " birds removed at " +
                           print_age(removal.at) + ", but about " + number(in_birds(alive(removal.at)), 1) +
                           " are alive then");
        }
        stretches_.push_back({removal.at, left / survival(removal.at)});
    }
}

double Flock::survival(Duration age) const { return 1 - mortality_.value(age) / 100; }

Heads Flock::alive(Duration age) const {
    Stretch current = stretches_.front();
    if (age <= current.from && stretches_.size() == 1) return counted_;
    for (Stretch const& stretch : stretches_) {
        if (stretch.from <= age) current = stretch;
    }
    return birds(current.per_survivor * survival(std::max(age, current.from)));
}

std::vector<double> Flock::breaks() const {
    std::vector<double> ages;
    for (curves::Row const& row : mortality_.rows()) ages.push_back(row.age_d);
    for (Stretch const& stretch : stretches_) ages.push_back(in_days(stretch.from));
    return ages;
}

}  // namespace cropful::engine
