#include "engine/cautions.hpp"

#include <algorithm>

#include "engine/caution_list.hpp"

namespace cropful::engine {

void CautionList::add(std::string text, std::string source) {
    Caution const one{std::move(text), std::move(source)};
    if (std::find(all_.begin(), all_.end(), one) == all_.end()) all_.push_back(one);
}

std::vector<Caution> cautions(Plan const& plan, Rations const& rations) {
    CautionList list;
    for (HatchPlan const& part : plan.hatches) feed_cautions(list, plan, part, rations);
    for (HatchPlan const& part : plan.hatches) drug_cautions(list, plan, part, rations);
    for (HatchPlan const& part : plan.hatches) water_cautions(list, plan, part, rations);
    store_cautions(list, plan);
    return list.all();
}

}  // namespace cropful::engine
