#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/blends/quantities.hpp"
#include "cropful/quantities/make.hpp"

/// Two feeds to one protein target: the square.
namespace cropful::blends {

struct SquareFeed {
    std::string name;
    double protein = 0;         // per cent
    std::optional<Mass> fixed;  // weighed in as it is; empty for the two that are balanced
};

struct SquareQuestion {
    double protein = 0;             // per cent of the whole batch
    std::vector<SquareFeed> feeds;  // two without a fixed weight, any number with one
    double keep = 0;                // share of the batch kept for what holds no protein
    Mass batch;
    Mass scale;
};

struct SquarePart {
    SquareFeed feed;
    double parts = 0;  // of the square; 0 for a fixed feed
    double share = 0;  // of the batch
    Mass amount;       // on the scale
};

struct Square {
    SquareQuestion question;
    bool possible = true;
    double balanced = 0;            // per cent the two must hold together
    std::vector<SquarePart> parts;  // as the question has them
    Mass kept;                      // for what holds no protein, on the scale
    double protein = 0;             // per cent of the batch as weighed
};

/// An impossible target is answered with the nearest mix: all of one feed. Throws NoAnswer where nothing is left to
/// balance.
Square square(SquareQuestion const& question);

}  // namespace cropful::blends
