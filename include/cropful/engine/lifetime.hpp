#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/moment.hpp"
#include "cropful/engine/quantities.hpp"
#include "cropful/quantities/make.hpp"

/// The usual use of feed and water, from the central curves and what the diary taught.
namespace cropful::engine {

/// An amount of one feed, extra waste included.
struct Eaten {
    std::string feed;
    Mass amount;
};

/// One day of the calendar, from midnight to midnight, or the part of it that birds are there.
struct Day {
    domain::Moment at;  // 00:00
    Heads birds;        // at its start, or when they come
    Volume water;
    std::vector<Eaten> feeds;
};

/// A hatch's whole life, whatever part of it is planned for.
struct Lifetime {
    Heads raised;  // alive at the end, and sold or moved before
    std::vector<Eaten> feeds{};
    std::vector<Eaten> in_lay{};     // of them, while laying
    std::vector<Eaten> week_more{};  // by those alive at the end, if they were kept for 7 d more
    std::optional<double> eggs{};    // absent: how many they lay is not stated
};

}  // namespace cropful::engine
