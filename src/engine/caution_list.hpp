#pragma once

#include "cropful/engine/plan.hpp"

namespace cropful::engine {

using namespace quantities;

using domain::Age;
using domain::Share;

/// Before the first egg, while the first yolks form; from memory.
inline constexpr Duration yolks_form = days(14);

/// A list of cautions that keeps each once.
class CautionList {
  public:
    void add(Caution caution);
    [[nodiscard]] std::vector<Caution> const& all() const { return all_; }

  private:
    std::vector<Caution> all_;
};

void feed_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations);
void drug_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations);
/// What must wait after a medicine, as the farm file states it.
void withdrawal_cautions(CautionList& list, Plan const& plan, HatchPlan const& part);
void water_cautions(CautionList& list, Plan const& plan, HatchPlan const& part);
void water_drug_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations);
/// Feed that stands too long in hoppers; of several hatches at once.
void stale_feed_cautions(CautionList& list, std::vector<HatchPlan> const& parts);
/// Tanks that run dry before anybody is there again.
void stock_cautions(CautionList& list, Plan const& plan);
void store_cautions(CautionList& list, Plan const& plan);
void readying_cautions(CautionList& list, Plan const& plan);

/// Whether a supplement is a medicine: its file says so, or its title names one known here.
bool is_medicine(domain::Supplement const& supplement, std::string const& kind, Rations const& rations);

}  // namespace cropful::engine
