#pragma once

#include "cropful/engine/plan.hpp"

namespace cropful::engine {

/// A list of cautions that keeps each text once.
class CautionList {
  public:
    void add(std::string text, std::string source);
    [[nodiscard]] std::vector<Caution> const& all() const { return all_; }

  private:
    std::vector<Caution> all_;
};

void feed_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations);
void drug_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations);
void water_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations);
void store_cautions(CautionList& list, Plan const& plan);
void readying_cautions(CautionList& list, Plan const& plan);

/// "label, veterinarian and local law decide": how every caution about drugs ends.
inline constexpr char const* defer = "The label, your veterinarian and local law decide.";

}  // namespace cropful::engine
