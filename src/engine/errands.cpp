#include "engine/errands.hpp"

#include <algorithm>

#include "engine/flock.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double a_bird = 0.5;  // fewer are none

/// The first time within the absence at which birds are planned to leave.
std::optional<Moment> leaves(domain::Farm const& farm, domain::Hatch const& hatch, Flock const& flock,
                             Absence const& absence) {
    std::vector<Duration> ages{hatch.until};
    for (domain::Removal const& removal : hatch.removed) ages.push_back(removal.at);
    for (domain::Residence const& one : domain::residences_of(hatch, farm)) ages.push_back(one.to);
    std::optional<Moment> first;
    for (Duration const& age : ages) {
        Moment const at = hatch.date + age;
        bool const then = absence.from < at && at < absence.until && age > hatch.first_age && age <= hatch.until;
        bool const any = in_birds(flock.alive(std::max(hatch.first_age, absence.from - hatch.date))) >= a_bird;
        if (then && any && (!first || at < *first)) first = at;
    }
    return first;
}

}  // namespace

std::vector<Errand> errands(domain::Farm const& farm, Rations const& rations, Absence const& absence) {
    std::vector<Errand> all;
    for (domain::Hatch const& hatch : farm.hatches) {
        if (!absence.hatches.holds(hatch.name)) continue;
        Kind const& kind = rations.kinds.at(hatch.kind);
        Flock const flock(hatch, kind);
        Moment const start = std::max(absence.from, hatch.date + hatch.first_age);
        Moment const heat_ends = hatch.date + std::min(kind.brooding_ends(), hatch.until);
        bool const hatches = hatch.first_age == days(0) && absence.from < hatch.date && hatch.date < absence.until;
        bool const alive = in_birds(flock.alive(start - hatch.date)) >= a_bird;
        if (hatches && alive) all.push_back({hatch.name, Call::hatching, hatch.date});
        if (alive && start < absence.until && start < heat_ends) all.push_back({hatch.name, Call::under_heat, start});
        if (auto const at = leaves(farm, hatch, flock, absence)) all.push_back({hatch.name, Call::leaving, *at});
    }
    std::stable_sort(all.begin(), all.end(), [](Errand const& a, Errand const& b) { return a.at < b.at; });
    return all;
}

}  // namespace cropful::engine
