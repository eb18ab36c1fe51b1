#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/engine/placement.hpp"
#include "cropful/engine/window.hpp"

/// What it takes to make brooders ready for the next birds.
namespace cropful::engine {

/// Bedding for all brooders of one sort.
struct BeddingPurchase {
    std::string brooder;
    int times;    // brooders readied
    Volume each;  // depth times floor
    Volume total;
    Volume bag;
    int bags;
    std::optional<Money> cost;
    Moment first;  // when the first is readied
};

/// Cleanings of the brooders of one sort, each with this much.
struct SortCleaning {
    std::string brooder;
    int times;
    Volume solution;
    Volume product;  // in the solution
    Volume water;    // in the solution
};

struct DisinfectantPurchase {
    std::string key;
    std::string title;
    double water_parts;  // added to one part of the product
    std::vector<SortCleaning> cleanings;
    Volume product;  // in all
    std::optional<int> packs;
    std::optional<Money> cost;
    Moment first;
};

struct Readying {
    std::vector<BeddingPurchase> bedding;
    std::vector<DisinfectantPurchase> disinfectants;
};

/// For every brooder readied in the window.
Readying readying(domain::Farm const& farm, Placement const& placement, Window const& window);

/// Parts of water to one part of product (C1 V1 = C2 V2, V2 the whole): strength / use_at - 1.
double water_parts(domain::Disinfectant const& disinfectant);

}  // namespace cropful::engine
