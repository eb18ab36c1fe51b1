#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cropful/domain/standing.hpp"
#include "cropful/domain/water.hpp"
#include "cropful/rations/quantities.hpp"

/// What may be in drinking water, and how it is judged.
namespace cropful::rations {

/// From the best to the worst; `fits` is what no row is about.
enum class WaterGrade { fits, aim, guide, caution, stop };
std::string name(WaterGrade grade);

/// A level from which on something is to be said.
struct WaterRow {
    std::string item;     // of domain::water_items(), or another
    std::string unit;     // as printed: "mg/L CaCO3"
    std::string applies;  // to whom, in words
    double level = 0;
    bool below = false;  // holds below the level, not above it
    WaterGrade grade = WaterGrade::aim;
    std::vector<std::string> kinds{};  // of the birds it was measured with; empty: poultry
    Duration from = days(0);           // ages
    std::optional<Duration> until{};
    std::optional<bool> layers{};  // holds in lay alone, or before it alone
    bool people = false;           // about who else drinks of the well, not about birds
    std::string meaning{};
    domain::Source source{};
};

/// "983 mg/L (young Japanese quail): 2.5 g of salt a litre ..."
std::string words_of(WaterRow const& row);

/// What turns one figure into another.
struct WaterFactor {
    double factor = 1;
    domain::Source source{};
};

/// Free chlorine in drinking water.
struct ChlorineRange {
    MassPerVolume least;
    MassPerVolume most;
    domain::Source source{};
};

/// The most sodium of a whole diet, in percent of the feed.
struct SodiumCeiling {
    bool laying = false;
    double at_most = 0;
    domain::Source source{};
};

struct WaterTable {
    std::vector<WaterRow> rows{};
    WaterFactor nitrate{};  // of its nitrogen
    WaterFactor tds{};      // mg/L for each dS/m
    WaterFactor strong_tds{};
    WaterFactor softener{};  // mg of sodium for each mg of hardness
    ChlorineRange chlorine{};
    std::vector<SodiumCeiling> ceilings{};
};

/// From this conductivity on `strong_tds` holds.
inline constexpr auto strong_water = quantities::Conductivity::microsiemens_per_centimetre(5000);
/// The factor that turns a conductivity into dissolved solids, and these.
WaterFactor const& tds_factor(quantities::Conductivity conductivity, WaterTable const& table);
MassPerVolume solids_of(quantities::Conductivity conductivity, WaterTable const& table);

/// Birds of a kind at an age; those of no kind are whoever drinks it, and all rows hold for them.
struct Drinking {
    std::string kind{};
    Duration age{};
    bool laying = false;
};

struct Graded {
    WaterGrade grade = WaterGrade::fits;
    WaterRow const* row = nullptr;  // null where no row holds
};
/// The worst that holds of a value; of rows of one grade the furthest. A row that was measured with other birds is no
/// more than a guide, but for a stop.
Graded graded(WaterTable const& table, std::string_view item, double value, Drinking const& drinking);

/// The row about people, where a value is above it.
WaterRow const* row_for_people(WaterTable const& table, std::string_view item, double value);

}  // namespace cropful::rations
