#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/moment.hpp"
#include "cropful/engine/band.hpp"
#include "cropful/engine/quantities.hpp"

namespace cropful::engine {

class HatchModel;
class Season;
struct Ages;

using namespace quantities;

/// What is eaten of some feeds by several hatches together, in every world.
class FarmNeeds {
  public:
    /// What a hatch eats of a feed between two ages is added, and returned in kg for each world.
    std::vector<double> add(std::string const& feed, HatchModel const& model, Ages const& ages);
    [[nodiscard]] std::map<std::string, Band<Mass>> const& bands() const;
    /// How much more than the usual flocks the farm's hungry ones eat: p95 over the middle.
    [[nodiscard]] std::map<std::string, double> hunger() const;

  private:
    struct Need {
        std::vector<double> worlds;  // kg
        Mass usual;
    };
    std::map<std::string, Need> needs_;
    mutable std::map<std::string, Band<Mass>> bands_;  // of those asked for since something was added
};

Band<Mass> in_mass(Band<double> const& kilograms);

/// Of all hatches of a farm from a moment to their ends.
std::map<std::string, double> farm_hunger(Season const& season, std::optional<domain::Moment> from);

}  // namespace cropful::engine
