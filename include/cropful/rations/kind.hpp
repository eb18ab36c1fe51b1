#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cropful/curves/curve.hpp"
#include "cropful/domain/nutrient.hpp"
#include "cropful/domain/standing.hpp"
#include "cropful/quantities/temperature.hpp"
#include "cropful/rations/quantities.hpp"
#include "cropful/rations/water.hpp"

/// What is built in about birds, feeds, drugs and limits; each group with its source.
namespace cropful::rations {

using domain::Source;

struct Growing {
    curves::Curve curve;
    EnergyPerMass energy;
    Source source;
    std::string caution;
    bool model_only = false;  // its weeks are a growth model's: no flock of the kind was measured so
};                            // g per bird and day
struct Laying {
    std::array<double, 3> rate;
    EnergyPerMass energy;
    Source source;
};  // g per bird and day
struct Mortality {
    curves::Curve curve;
    Source source;
};  // per cent dead
struct HatchRate {
    double value;
    double low;
    double high;
    Source source;
    std::string note;  // what moves it, or another's figure; empty where there is none
};                     // fractions of eggs set
/// Days from the first of incubation to the hatch.
struct Incubation {
    int low;
    int high;
    Source source;
};
struct WaterRatio {
    std::array<double, 3> ratio;
    Source source;
};  // mL per g of feed
struct HeatResponse {
    PerWarmth per_degree;
    Temperature above;
    Source source;
};
struct EnergyResponse {
    double elasticity;
    Source source;
};
struct BroodingRow {
    int first_day;
    int last_day;
    Temperature low;
    Temperature high;
};
struct Brooding {
    std::vector<BroodingRow> rows;
    Source source;
};
struct SpaceRow {
    Duration from;
    double birds_per_square_foot;
    double feeder_inches_per_bird;
};
struct Space {
    std::vector<SpaceRow> rows;
    double birds_per_foot_of_water_trough;
    double day_olds_per_three_founts;  // each of a US gallon
    Source source;
    std::string note;
};

/// One kind of bird.
struct Kind {
    std::string key;  // "coturnix-jumbo"
    std::string title;
    std::string latin;
    std::vector<std::string> also;
    std::string needs_table;
    Source needs_source;
    Growing growing;
    std::optional<Laying> laying;
    Mortality mortality;
    HatchRate hatch_rate;
    Incubation incubation;
    WaterRatio water;
    HeatResponse water_heat;  // a rise per degree
    HeatResponse feed_heat;   // a fall per degree
    EnergyResponse feed_energy;
    Brooding brooding;
    Space space;
    /// Age from which the barn's air, not the brooder, warms the birds: the start of the last brooding row's first day.
    [[nodiscard]] Duration brooding_ends() const { return days(brooding.rows.back().first_day - 1); }
};

struct Need {
    std::string nutrient;
    double level;
    bool found;
};  // found: read in another publication

struct Phase {
    std::string name;
    bool laying = false;
    Duration from = days(0);
    std::optional<Duration> to;  // open when absent
    EnergyPerMass energy;
    std::vector<Need> needs;  // protein first, energy not among them
};

struct NeedsNote {
    std::string phase;
    std::string nutrient;
    std::string says;
    Source source;
};

struct NeedsTable {
    std::string key;
    std::string title;
    std::string basis;
    Source source;
    std::vector<Phase> phases;
    std::vector<NeedsNote> notes;
};

struct FormDensity {
    std::array<MassPerVolume, 3> density;
    Source source;
};
/// A powder as kitchens have it, and what a level spoonful weighs.
struct Powder {
    std::string name;
    MassPerVolume spoon;
    std::string note;
    Source source;
    /// Of a level US teaspoon, 1/768 gal.
    [[nodiscard]] Mass teaspoonful() const { return spoon * litres(litres_per_gallon / 768); }
};
struct Limit {
    std::string key;
    std::string applies;
    double level;  // in the nutrient's own unit
    std::string words;
    std::string meaning;
    bool stop = false;  // from this level on birds die of it: nothing of it may be given
    Source source;
};
struct Drug {
    std::string name;
    std::vector<std::string> also;
    std::vector<std::string> birds;
    bool growing_only = false;
    std::optional<Duration> max_age;
    std::vector<Mass> per_short_ton;  // one level or a range
    bool not_for_layers = false;
    std::vector<std::string> danger;
    std::vector<std::string> limits;
    bool banned = false;                    // no veterinarian may order it off label
    std::vector<std::string> in_water;      // kinds it is approved for in water
    std::vector<std::string> water_limits;  // conditions there
    Source source;
};

/// Everything built in that a question may need; readers fill it.
struct Rations {
    std::map<std::string, Kind> kinds;  // by key; those the question names
    std::map<std::string, NeedsTable> needs;
    std::map<std::string, FormDensity> forms;  // "mash", "crumble", "pellet"
    std::vector<Limit> limits;
    std::vector<Drug> drugs;
    WaterTable water{};
};

}  // namespace cropful::rations
