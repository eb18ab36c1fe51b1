#include "engine/cautions.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "cropful/domain/ranges.hpp"
#include "engine/caution_list.hpp"
#include "engine/well.hpp"

namespace cropful::engine {

using namespace quantities;

void CautionList::add(Caution caution) {
    if (std::find(all_.begin(), all_.end(), caution) == all_.end()) all_.push_back(std::move(caution));
}

namespace {

/// Birds that find no brooder.
void placement_cautions(CautionList& list, Plan const& plan) {
    for (Unplaced const& one : plan.placement.unplaced) {
        bool const planned = std::any_of(plan.hatches.begin(), plan.hatches.end(),
                                         [&](HatchPlan const& part) { return part.hatch.name == one.hatch; });
        if (!planned) continue;
        list.add({.id = "no-brooder",
                  .hatches = {one.hatch},
                  .with = {{"birds", birds(std::ceil(in_birds(one.birds) - 1e-9))},
                           {"all", one.of},
                           {"brooder", one.brooder}},
                  .source = "the brooders of the farm file"});
    }
}

/// Hatches of which birds live in one house at a time, of each sort that is shared. Stays in order of date.
std::map<std::string, std::vector<std::string>> sharers(Placement const& placement) {
    std::map<std::string, std::vector<std::string>> all;
    std::map<std::pair<std::string, int>, std::vector<Stay const*>> there;  // of each house, those not yet out
    for (Stay const& stay : placement.stays) {
        auto& others = there[{stay.brooder, stay.number}];
        std::erase_if(others, [&](Stay const* other) { return other->to <= stay.from; });
        others.push_back(&stay);
        if (!stay.joins) continue;
        auto& names = all[stay.brooder];
        for (Stay const* other : others) {
            if (!ranges::contains(names, other->hatch)) names.push_back(other->hatch);
        }
    }
    return all;
}

void sharing_cautions(CautionList& list, Plan const& plan) {
    for (auto const& [house, names] : sharers(plan.placement)) {
        bool const planned = ranges::any_of(
            plan.hatches, [&names = names](HatchPlan const& part) { return ranges::contains(names, part.hatch.name); });
        if (!planned) continue;
        list.add({.id = "shared-house",
                  .hatches = names,
                  .with = {{"house", house}},
                  .source = "common practice, no source"});
    }
}

void silence(CautionList& list, Plan const& plan) {
    Caution caution{.id = "diary-out-of-date", .source = "the diary"};
    for (HatchPlan const& part : plan.hatches) {
        if (part.out_of_date) caution.hatches.push_back(part.hatch.name);
    }
    if (!caution.hatches.empty()) list.add(std::move(caution));
}

}  // namespace

std::vector<Caution> cautions(Plan const& plan, Rations const& rations) {
    CautionList list;
    placement_cautions(list, plan);
    sharing_cautions(list, plan);
    silence(list, plan);
    well_cautions(list, plan, rations);
    for (HatchPlan const& part : plan.hatches) feed_cautions(list, plan, part, rations);
    for (HatchPlan const& part : plan.hatches) drug_cautions(list, plan, part, rations);
    for (HatchPlan const& part : plan.hatches) withdrawal_cautions(list, plan, part);
    for (HatchPlan const& part : plan.hatches) water_drug_cautions(list, plan, part, rations);
    for (HatchPlan const& part : plan.hatches) hatch_water_cautions(list, plan, part);
    for (HatchPlan const& part : plan.hatches) water_cautions(list, plan, part);
    stock_cautions(list, plan);
    stale_feed_cautions(list, plan.hatches);
    store_cautions(list, plan);
    readying_cautions(list, plan);
    return list.all();
}

}  // namespace cropful::engine
