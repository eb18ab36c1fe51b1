#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/engine/agenda.hpp"

/// What a sheet to hang on the brooder shows: the plan, and beside it the course of each flock from day to day.
namespace cropful::engine {

struct HeadsAt {
    Duration age;
    Heads birds;
};
struct DayFeed {
    Duration age;  // at the start of the day
    Mass central;  // the whole flock, extra waste included
    Band<Mass> band;
};
struct ProteinAt {
    Duration age;
    std::optional<Mass> given;  // per bird and day; absent where the label states none
    Mass need;
};

/// Room for the birds alive at an age, by the kind's table.
struct RoomNeeded {
    Duration from;
    Heads birds;
    double birds_per_square_foot;
    double feeder_inches_per_bird;
    double floor_square_feet;
    double feeder_feet;
    double water_trough_feet;
    std::optional<int> founts;  // of a US gallon; day-olds only
};

struct HatchSheet {
    std::vector<HeadsAt> heads;            // every day, and on both sides of where the count jumps
    std::vector<DayFeed> days;             // whole days only, unless there is none
    std::vector<ProteinAt> protein;        // every day, and on both sides of a change of feed or phase
    std::vector<BroodingRow> warmth;       // of the ages in the plan
    std::vector<RoomNeeded> room;          // the same
    std::string room_note;                 // another source that disagrees
    std::vector<std::optional<int>> bags;  // whole bags that hold what hungry birds eat of each feed of the hatch
    std::vector<Caution> cautions;         // of this hatch
};

struct Sheet {
    Plan plan;
    std::vector<HatchSheet> hatches;  // in the order of the plan's
    BrooderAdvice advice;
    std::vector<Assumption> assumptions;  // the plan's, and what the brooder's figures and words rest on
    std::vector<Caution> cautions;        // of no one hatch
    std::optional<Moment> until{};        // two weeks after the first task; absent without one
    std::vector<Task> tasks{};            // till then, but for those to fetch, which are all there are
    std::map<std::string, std::vector<BroodingRow>> warmth{};  // of every kind
};

/// Room for `birds` by one row of a kind's table.
RoomNeeded room_for(Space const& space, SpaceRow const& row, Heads birds);

/// The plan and all a sheet shows beside it. Throws NoAnswer where the data allow no plan.
Sheet make_sheet(Season const& season, BrooderAdvice advice, Window window = {}, Progress const& progress = {});

}  // namespace cropful::engine
