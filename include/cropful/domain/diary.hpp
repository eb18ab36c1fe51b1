#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "cropful/domain/moment.hpp"
#include "cropful/quantities/text.hpp"

/// What was seen and done in the barn, as written down.
namespace cropful::domain {

/// The word in a diary, and what its amount is.
enum class Deed {
    topped_up,      // feed or water put in until all the hatch's hoppers or drinkers were full
    part_filled,    // feed or water put in that did not fill them
    thrown_out,     // old feed or water thrown away
    found_empty,    // the hoppers or drinkers were empty; no amount
    died,           // birds
    counted,        // birds alive then
    moved_out,      // birds sold, killed or moved elsewhere
    moved_in,       // birds that joined
    level_left,     // what was left in all the hoppers or drinkers when they had been seen to, as it was planned
    stock_counted,  // feed in the store
    bought,         // feed brought into the store
    done,           // a task of the agenda, whose id its note is; what was put in as planned, 0 birds for other tasks
    noted,          // nothing but the note; 0 birds
};
std::string name(Deed deed);  // "topped up"
/// The deed called so, as `name` says it; throws BadInput.
Deed parse_deed(std::string_view text);
/// Whether its amount counts birds; the others are about feed or water.
bool counts_birds(Deed deed);
/// Whether its amount may be any: `done` and `noted`.
bool counts_anything(Deed deed);
/// Whether it is about a feed in the store, and no hatch.
bool is_of_store(Deed deed);

/// Mass for hoppers, volume for drinkers, heads for birds. `found_empty` has none of what the vessels hold.
using Amount = std::variant<quantities::Mass, quantities::Volume, quantities::Heads>;
/// The unit an amount is kept in, "kg", "L" or "birds", and its number of them.
std::string unit(Amount const& amount);
double number(Amount const& amount);
/// The amount of so many of a unit, as `unit` says it; throws BadInput.
Amount amount_in(std::string_view unit, double number);
/// Feed by weight or water by volume, in any unit of these; throws BadInput.
Amount parse_feed_or_water(std::string_view text, quantities::Measures measures);

/// One line of a diary.
struct Entry {
    Moment at;
    std::string hatch;  // its name in the farm file; of the store, the key of its feed
    Deed deed;
    Amount amount;
    std::string note;
    std::optional<std::chrono::minutes> utc_offset = {};  // the barn's clock then, less UTC; absent: not known
    friend bool operator==(Entry const&, Entry const&) = default;
};

/// The most an amount may be, in kg, L or birds.
inline constexpr double most_amount = 1e6;
/// Throws BadInput for an amount that is no number from 0 to `most_amount`, or not one of its deed: birds are whole,
/// and nothing was in what was found empty.
void check_amount(Entry const& entry);

/// The furthest a clock may be from UTC; the world's are from -12 h to +14 h.
inline constexpr std::chrono::minutes furthest_offset{18 * 60};
/// A moment as typed, "2027-11-07T01:30", and what its clock is ahead of UTC where that is typed with it, as in
/// "2027-11-07T01:30-05:00"; throws BadInput.
struct Stamp {
    Moment at;
    std::optional<std::chrono::minutes> utc_offset;
};
Stamp parse_stamp(std::string_view text);
/// Minutes in UTC since 1970, by the entry's offset; without one as if its clock showed UTC.
std::int64_t utc_minute(Entry const& entry);

/// In order of time as UTC has it, so that the hour a clock shows twice is in the order it was; entries of one moment
/// in the order they were written.
using Diary = std::vector<Entry>;
/// Sorts so.
void put_in_order(Diary& entries);

}  // namespace cropful::domain
