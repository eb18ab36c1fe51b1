#pragma once

#include "cropful/engine/plan.hpp"

namespace cropful::engine {

using namespace quantities;

using domain::Age;
using domain::Share;

/// A list of assumptions that keeps each once.
class AssumptionList {
  public:
    void add(Assumption assumption);
    std::vector<Assumption> all;
};

/// Everything the plan rests on that its owner did not measure, each once, with its standing.
std::vector<Assumption> assumptions(Plan const& plan, Rations const& rations);

/// A feed between two ages.
struct Fed {
    std::string feed;
    Duration from;
    Duration to;
};
/// What a hatch eats, how many of it hatch and die, what its feeds weigh.
void about_hatch(AssumptionList& list, domain::Farm const& farm, domain::Hatch const& hatch,
                 std::vector<Fed> const& feeds, Rations const& rations);
/// How far flocks lie apart, which decides what is sure.
void about_spread(AssumptionList& list, domain::Farm const& farm, bool hoppers, bool learned);
/// How much a kind drinks.
void about_water(AssumptionList& list, Kind const& kind);
/// How bedding and disinfectant are reckoned, where there are any.
void about_readying(AssumptionList& list, domain::Farm const& farm, Readying const& readying);

}  // namespace cropful::engine
