#pragma once

#include <vector>

#include "engine/crowd.hpp"
#include "engine/roster.hpp"

namespace cropful::engine {

/// What a booking gets of a sort that is shared.
struct Lodged {
    std::vector<int> numbers;
    std::vector<Heads> birds;  // in each of them on the first day
    Heads left_over;           // birds without a place on the worst day
};

/// Bookings in order of date, each with its crowd, take the lowest numbers in which their birds, spread evenly over all
/// the houses they need, fit beside those that live there: at no time more than what fills a house. An empty house is
/// free after its rest; one in which birds live is joined. A booking that finds too few fills those it gets.
std::vector<Lodged> share_houses(std::vector<Booking> const& bookings, std::vector<Crowd> const& crowds,
                                 domain::Brooder const& sort);

}  // namespace cropful::engine
