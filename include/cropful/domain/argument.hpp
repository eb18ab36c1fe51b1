#pragma once

#include <map>
#include <string>
#include <variant>
#include <vector>

#include "cropful/domain/moment.hpp"
#include "cropful/quantities/temperature.hpp"

/// What is said of a caution or an assumption besides its id: quantities under names. The words around them are the
/// reports'.
namespace cropful::domain {

/// How old birds are, where a Duration is how long something takes.
struct Age {
    quantities::Duration of;
    friend bool operator==(Age, Age) = default;
};

/// 0.24 is 24 %.
struct Share {
    double of_one = 0;
    friend bool operator==(Share, Share) = default;
};

/// How much of a nutrient, in its own unit.
struct Content {
    std::string nutrient;  // its key
    double amount = 0;
    friend bool operator==(Content const&, Content const&) = default;
};

/// About so much for one of several.
struct Portion {
    std::string to;
    quantities::Mass amount;
    friend bool operator==(Portion const&, Portion const&) = default;
};

/// A thing, with the titles of its figures that are less sure than the rest.
struct Known {
    std::string what;
    std::vector<std::string> less_sure;
    friend bool operator==(Known const&, Known const&) = default;
};

/// A double is a plain number; a string is a name, or words quoted from data.
using Argument =
    std::variant<std::string, std::vector<std::string>, double, quantities::Mass, quantities::Duration, Age, Moment,
                 quantities::Heads, quantities::Temperature, quantities::PerWarmth, quantities::MassPerVolume,
                 quantities::MassPerBirdDay, quantities::VolumePerMass, quantities::EnergyPerMass, Share, Content,
                 std::vector<Content>, std::vector<Portion>, std::vector<Known>>;
using Arguments = std::map<std::string, Argument>;

}  // namespace cropful::domain
