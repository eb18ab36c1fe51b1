#include "cropful/engine/readying.hpp"

#include <algorithm>

#include "engine/bags.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// The brooders of one sort that are readied in a time.
struct Readied {
    int times = 0;
    std::optional<Moment> first;
};

Readied readied(domain::Brooder const& sort, Placement const& placement, Window const& window) {
    Readied all;
    for (Stay const& stay : placement.stays) {
        if (stay.joins || stay.brooder != sort.key || !window.hatches.holds(stay.hatch) || !window.holds(stay.ready_by))
            continue;
        all.times += 1;
        all.first = std::min(all.first.value_or(stay.ready_by), stay.ready_by);
    }
    return all;
}

BeddingPurchase bedding(domain::Brooder const& sort, Readied const& ready) {
    domain::Bedding const& its = *sort.bedding;
    Volume const each = box(its.depth, sort.floor->length, sort.floor->width);
    Volume const total = each * static_cast<double>(ready.times);
    int const bags = whole(ratio(total / its.bag));
    return {sort.key, ready.times, each, total, its.bag, bags, cost(its.price, bags), *ready.first};
}

SortCleaning cleaning(domain::Brooder const& sort, domain::Disinfectant const& disinfectant, int times) {
    Volume const solution = sort.cleaning->solution;
    Volume const product = solution * (disinfectant.use_at / disinfectant.strength);
    return {sort.key, times, solution, product, solution - product};
}

std::optional<DisinfectantPurchase> disinfectant(domain::Disinfectant const& one, domain::Farm const& farm,
                                                 Placement const& placement, Window const& window) {
    std::vector<SortCleaning> cleanings;
    std::optional<Moment> first;
    Volume product = litres(0);
    for (auto const& [key, sort] : farm.brooders) {
        if (!sort.cleaning || sort.cleaning->disinfectant != one.key) continue;
        auto const ready = readied(sort, placement, window);
        if (!ready.first) continue;
        cleanings.push_back(cleaning(sort, one, ready.times));
        product += cleanings.back().product * static_cast<double>(ready.times);
        first = std::min(first.value_or(*ready.first), *ready.first);
    }
    if (!first) return std::nullopt;
    DisinfectantPurchase bought{one.key, one.title, water_parts(one), std::move(cleanings), product, {}, {}, *first};
    if (one.pack) {
        bought.packs = whole(ratio(product / *one.pack));
        bought.cost = cost(one.price, *bought.packs);
    }
    return bought;
}

}  // namespace

double water_parts(domain::Disinfectant const& disinfectant) { return disinfectant.strength / disinfectant.use_at - 1; }

Readying readying(domain::Farm const& farm, Placement const& placement, Window const& window) {
    Readying all;
    for (auto const& [key, sort] : farm.brooders) {
        auto const ready = readied(sort, placement, window);
        if (sort.bedding && ready.first) all.bedding.push_back(bedding(sort, ready));
    }
    for (auto const& [key, one] : farm.disinfectants) {
        if (auto const bought = disinfectant(one, farm, placement, window)) all.disinfectants.push_back(*bought);
    }
    return all;
}

}  // namespace cropful::engine
