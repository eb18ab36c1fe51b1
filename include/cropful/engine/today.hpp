#pragma once

#include <vector>

#include "cropful/engine/agenda.hpp"

/// What is still to be done now and in the days to come.
namespace cropful::engine {

/// A task with its number on a calendar day, which it keeps when others are done.
struct Numbered {
    int number;
    Task task;
    bool done = false;
};

struct Today {
    Moment now;
    Moment until;
    Plan plan;                    // from now on
    std::vector<Numbered> day;    // of the calendar day, done or not, by number
    std::vector<Numbered> tasks;  // still to be done until then, in order of time, what is overdue first
    std::vector<Task> coming;     // after that: the next of those a person makes ready for
};

/// Numbers hold for the calendar day: they are those of the day as it began, with what was written before it, and what
/// has come since is numbered behind. Days after it go on counting. Without a diary everything before now is taken as
/// done; with one what is not written, nor ticked, is still to be done; once somebody has ticked, what a day left
/// undone of moves, houses to ready or clean, birds to sell and feeds to change comes before the next days' for two
/// weeks. Throws NoAnswer where all birds are gone.
Today make_today(domain::Farm const& farm, Rations const& rations, domain::Diary const& diary, Moment now,
                 Duration ahead, HatchChoice const& hatches = {}, Progress const& progress = {});

}  // namespace cropful::engine
