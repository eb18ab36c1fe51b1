#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/rations/kind.hpp"

namespace cropful::rations {

/// Ceilings that are built in, by the birds' state.
struct BlendRule {
    enum class Of { nutrient, ingredient };
    Of of = Of::nutrient;
    std::string key;  // a nutrient, or the built-in ingredient something is like
    bool laying = false;
    double at_most = 0;
    std::string per;        // at_most is so many times what the mix holds of this nutrient; may be empty
    bool of_table = false;  // energy only: at_most is so many times that of the kind's table
    std::string why;
    Source source;
};

/// Floors that other kinds' tables lend to one that is silent, by the birds' state and age.
struct BlendGuide {
    std::string nutrient;
    bool laying = false;
    Duration from = days(0);     // ages at which a growing phase starts
    std::optional<Duration> to;  // open when absent
    double at_least = 0;
    Source source;
};

struct BlendTables {
    std::vector<BlendRule> rules;
    std::vector<BlendGuide> guides;
    std::vector<Limit> limits;  // levels in feed that harm
};

}  // namespace cropful::rations
