#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "cropful/engine/rations.hpp"

/// Which brooder holds which hatch.
namespace cropful::engine {

class Season;
using domain::Moment;

/// One brooder while it is one hatch's.
struct Stay {
    std::string brooder;  // its sort
    int number;           // 1 for the first of the sort
    std::string hatch;
    Moment from;
    Moment to;
    Moment free_from;    // once it has rested
    Heads birds;         // on the first day; a hatch's birds share its brooders equally, as far as these hold them
    Moment ready_by;     // before `from`: its rest, or a day where none is stated, or two days for a stage of housing;
                         // never before the last birds are out
    bool joins = false;  // other birds live in it on the first day: it is not made ready for these
};

/// A hatch that gets fewer brooders than it needs.
struct Unplaced {
    std::string hatch;
    std::string brooder;
    Heads birds;  // without a place on the worst day
    Heads of;     // birds on the first day
    int needs;
    int gets;
    Moment from;
    Moment to;
    std::optional<Moment> fits_before;  // the nearest date of hatch, earlier or later, on which the whole of it fits
    std::optional<Moment> fits_after;   // and no other hatch gets fewer brooders than now; absent: none within a year,
                                        // or not sought
};

struct Placement {
    std::vector<Stay> stays;  // in order of date, of one hatch by number
    std::vector<Unplaced> unplaced;
    std::vector<std::string> unnamed;  // hatches that name no brooder
};

/// Whether dates on which a hatch would fit are looked for.
enum class Fits { left_out, sought };
/// A hatch takes, for its whole stay, as many brooders of its sort as its most crowded day needs, with birds alive by
/// the central curve and the diary; for a stage of its housing as many houses as hold the birds of its start to be
/// sure. Hatches in order of date take the lowest numbers that are free; a brooder is free
/// again after its rest; two hatches never share one, unless the sort is shared: then they do as long as their birds
/// fit at every time. A hatch that finds too few takes those there are.
Placement place(Season const& season, Fits fits = Fits::left_out);

}  // namespace cropful::engine
