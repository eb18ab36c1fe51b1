#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/quantities.hpp"
#include "cropful/quantities/make.hpp"

/// Where chicks are kept warm, and what it takes to make that ready. Fractions are 0 to 1.
namespace cropful::domain {

/// Birds that one brooder holds from an age on.
struct Room {
    Duration from;
    Heads birds;
};

struct Floor {
    Length length;
    Length width;
};

struct Bedding {
    Length depth;
    Volume bag;  // loose
    std::optional<Money> price;
};

/// What cleaning one brooder takes.
struct Cleaning {
    std::string disinfectant;  // its key
    Volume solution;           // ready to use
};

/// All brooders of one sort.
struct Brooder {
    std::string key;
    int count = 1;
    std::vector<Room> holds;                             // in order of age, the first from 0; empty where it is by kind
    std::map<std::string, std::vector<Room>> of_kind{};  // in place of `holds`: what it holds of each kind
    bool shared = false;                                 // several hatches may live in one at a time
    Duration until;                                      // age at which the birds leave
    std::optional<Duration> rest;
    std::optional<Floor> floor;
    std::optional<Bedding> bedding;  // never without a floor
    std::optional<Cleaning> cleaning;
};

/// What it holds of a kind, by age.
std::vector<Room> const& rooms_of(Brooder const& brooder, std::string const& kind);

struct Disinfectant {
    std::string key;
    std::string title;
    double strength = 0;  // active part of the product
    double use_at = 0;    // the same, wanted on the surface; at most `strength`
    std::optional<Volume> pack;
    std::optional<Money> price;
};

}  // namespace cropful::domain
