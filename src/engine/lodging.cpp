#include "engine/lodging.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/domain/ranges.hpp"
#include "cropful/quantities/whole.hpp"
#include "engine/hatch_model.hpp"
#include "engine/instant.hpp"
#include "engine/rounding.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// How many houses of a sort hold so many birds at an age, whatever it is until another.
int houses_for(domain::Brooder const& sort, HatchModel const& model, double sure, Duration from, Duration to) {
    auto const& rooms = domain::rooms_of(sort, model.hatch().kind);
    double most = 1;
    for (domain::Room const& room : rooms) {
        Duration const age = std::max(from, room.from);
        bool const over = ranges::any_of(
            rooms, [&](domain::Room const& later) { return later.from > room.from && later.from <= from; });
        if (over || !(age < to)) continue;
        most = std::max(most, sure * ratio(model.flock().alive(age) / room.birds));
    }
    return whole_number(std::ceil(most - rounding));
}

template <class Lost>
ByAge by_stage(domain::Hatch const& hatch, Lost const& lost) {
    std::vector<std::pair<double, double>> steps;
    for (domain::Stage const& stage : domain::stages_of(hatch)) steps.emplace_back(in_days(stage.from), lost(stage));
    return ByAge(std::move(steps));
}

}  // namespace

std::vector<Lodging> lodgings(domain::Farm const& farm, HatchModel const& model) {
    domain::Hatch const& hatch = model.hatch();
    auto const stages = domain::stages_of(hatch);
    std::vector<Lodging> all;
    for (std::size_t i = 0; i < stages.size(); ++i) {
        domain::Stage const& stage = stages[i];
        Duration const from = std::max(stage.from, hatch.first_age);
        Duration const to = i + 1 < stages.size() ? std::min(stages[i + 1].from, hatch.until) : hatch.until;
        if (!(from < to)) continue;
        Lodging one{stage, from, to, stage.houses.value_or(1)};
        if (stage.house) {
            one.sure = ratio(model.sure_heads(from) / std::max(model.flock().alive(from), birds(1e-9)));
            if (!stage.houses) one.houses = houses_for(farm.brooders.at(*stage.house), model, one.sure, from, to);
        }
        all.push_back(one);
    }
    return all;
}

Lodging const* lodging_at(std::vector<Lodging> const& lodgings, Duration age) {
    auto const found = ranges::find_if(
        lodgings, [&](Lodging const& one) { return one.from <= age + instant && age + instant < one.to; });
    return found == lodgings.end() ? nullptr : &*found;
}

ByAge extra_waste(domain::Farm const& farm, domain::Hatch const& hatch) {
    return by_stage(hatch, [&](domain::Stage const& stage) {
        return stage.hopper ? farm.hoppers.at(*stage.hopper).extra_waste : 0;
    });
}

ByAge spill(domain::Farm const& farm, domain::Hatch const& hatch) {
    return by_stage(
        hatch, [&](domain::Stage const& stage) { return stage.drinker ? farm.drinkers.at(*stage.drinker).spill : 0; });
}

}  // namespace cropful::engine
