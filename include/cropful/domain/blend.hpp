#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/quantities.hpp"
#include "cropful/domain/standing.hpp"
#include "cropful/quantities/text.hpp"

/// Feeds mixed on the farm, as their owner wrote them. Fractions are 0 to 1; levels are in the nutrient's own unit.
namespace cropful::domain {

/// How much of a nutrient an ingredient holds. A guaranteed minimum alone leaves the most unknown.
struct Level {
    double least = 0;
    std::optional<double> most;
    Standing standing = Standing::yours;
    bool less_sure = false;  // than the rest of its row
};

/// What may go into a mix. A nutrient that does not stand in `holds` is unknown, never zero.
struct Ingredient {
    std::string key;
    std::string title;
    std::string like;  // the built-in ingredient it is, or is like; may be empty
    std::optional<MoneyPerMass> price;
    std::map<std::string, Level> holds;  // by nutrient
    double at_least = 0;                 // share of the mix
    std::optional<double> at_most;
    bool medicated = false;
    bool liquid = false;   // poured in last
    bool mineral = false;  // such as limestone or salt: holds nothing organic, whatever it does not state
    Source source;         // of what it holds, where that is not the owner's own figure
};

/// A floor, a ceiling or both.
struct Bounds {
    std::optional<double> floor;
    std::optional<double> ceiling;
};

struct Weighed {
    std::string ingredient;
    Mass amount;
};

/// A mix to be found, or one to be looked at when it has `amounts`.
struct Blend {
    std::string name;
    std::optional<std::string> kind;   // absent: only the needs below count
    std::optional<std::string> phase;  // of the kind's needs; absent: by `age` or `laying`
    std::optional<Duration> age;
    bool laying = false;
    std::optional<Mass> batch;
    std::optional<Mass> scale;  // the step of the scale
    std::vector<std::string> use;
    std::map<std::string, Bounds> need;  // by nutrient, before the kind's
    std::vector<Weighed> amounts;
};

}  // namespace cropful::domain
