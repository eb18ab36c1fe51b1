#pragma once

#include "cropful/engine/plan.hpp"

namespace cropful::engine {

/// A list of assumptions that keeps each text once.
class AssumptionList {
  public:
    void add(std::string text, Source source);
    std::vector<Assumption> all;
};

/// Everything the plan rests on that its owner did not measure, each once, with its standing.
std::vector<Assumption> assumptions(Plan const& plan, Rations const& rations);

/// How much a kind drinks.
void about_water(AssumptionList& list, Kind const& kind);
/// How bedding and disinfectant are reckoned, where there are any.
void about_readying(AssumptionList& list, domain::Farm const& farm, Readying const& readying);

}  // namespace cropful::engine
