#include "blends/blend_prices.hpp"

#include <algorithm>
#include <cmath>

#include "blends/blend_analysis.hpp"

namespace cropful::blends {

using namespace quantities;

namespace {

constexpr double worth_saying = 1e-9;  // of a dual, per kg

/// The step that is easy to read: a point of protein or of an ingredient, 100 kcal/kg, half as much again of another
/// nutrient, else a tenth of the level.
double step(BlendLimit const& limit) {
    if (limit.of == BlendLimit::Of::ingredient) return 0.01;
    if (!limit.per.empty()) return 0.5;
    if (limit.key == "protein" && limit.level >= 1) return 1;
    if (limit.key == "energy") return 100;
    return limit.level > 0 ? limit.level / 10 : 1;
}

/// The row's dual for one more of the limit's own unit.
double dual_of(BlendProblem const& problem, std::size_t limit, Optimum const& optimum) {
    BlendLimit const& one = problem.limits[limit];
    double const scaled = optimum.row_duals[row_of(limit)] / unit_of_row(one);
    if (!one.per.empty()) return scaled * held(problem.ingredients, one.per, optimum.x);
    return one.for_energy ? scaled * level_asked(one, problem.ingredients, optimum.x) / one.level : scaled;
}

/// A share that is fixed from both sides is no choice to price.
bool is_fixed(BlendProblem const& problem, BlendLimit const& limit) {
    return std::any_of(problem.limits.begin(), problem.limits.end(), [&](BlendLimit const& other) {
        return other.of == limit.of && other.key == limit.key && other.per == limit.per && other.floor != limit.floor &&
               other.level == limit.level;
    });
}

}  // namespace

std::vector<ShadowPrice> shadow_prices(BlendProblem const& problem, Optimum const& optimum) {
    std::vector<ShadowPrice> prices;
    for (std::size_t i = 0; i < problem.limits.size(); ++i) {
        double const dual = dual_of(problem, i, optimum);
        if (std::abs(optimum.row_duals[row_of(i)]) <= worth_saying) continue;
        BlendLimit const& limit = problem.limits[i];
        double const to = limit.level + step(limit);
        Optimum const moved = minimise(with_level(problem, i, to));
        ShadowPrice price{.limit = limit, .to = to, .change = {}, .fixed = is_fixed(problem, limit), .dual = dual};
        if (moved.outcome == Outcome::optimal) price.change = money_per_kilogram(moved.cost - optimum.cost);
        prices.push_back(price);
    }
    return prices;
}

}  // namespace cropful::blends
