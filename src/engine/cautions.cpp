#include "engine/cautions.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/print.hpp"
#include "engine/caution_list.hpp"

namespace cropful::engine {

void CautionList::add(std::string id, std::string text, std::string source) {
    Caution const one{std::move(id), std::move(text), std::move(source)};
    if (std::find(all_.begin(), all_.end(), one) == all_.end()) all_.push_back(one);
}

namespace {

/// Birds that find no brooder.
void placement_cautions(CautionList& list, Plan const& plan) {
    for (Unplaced const& one : plan.placement.unplaced) {
        bool const planned = std::any_of(plan.hatches.begin(), plan.hatches.end(),
                                         [&](HatchPlan const& part) { return part.hatch.name == one.hatch; });
        if (!planned) continue;
        list.add("no-brooder",
                 one.hatch + ": " + number(std::ceil(in_birds(one.birds) - 1e-9), 0) + " of " +
                     quantities::print(one.of) + " birds have no place in " + one.brooder +
                     "; `cropful season` says when and what would fit.",
                 "the brooders of the farm file");
    }
}

}  // namespace

std::vector<Caution> cautions(Plan const& plan, Rations const& rations) {
    CautionList list;
    placement_cautions(list, plan);
    for (HatchPlan const& part : plan.hatches) feed_cautions(list, plan, part, rations);
    for (HatchPlan const& part : plan.hatches) drug_cautions(list, plan, part, rations);
    for (HatchPlan const& part : plan.hatches) water_drug_cautions(list, plan, part, rations);
    for (HatchPlan const& part : plan.hatches) water_cautions(list, plan, part, rations);
    stale_feed_cautions(list, plan, plan.hatches);
    store_cautions(list, plan);
    readying_cautions(list, plan);
    return list.all();
}

}  // namespace cropful::engine
