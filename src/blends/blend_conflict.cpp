#include "blends/blend_conflict.hpp"

#include <algorithm>
#include <utility>

namespace cropful::blends {

namespace {

constexpr double hair = 1e-9;  // of a limit

/// Whether a mix keeps all of these limits.
bool can_keep(BlendProblem const& problem, std::vector<std::size_t> const& limits) {
    LinearProgram program{.cost = std::vector<double>(problem.program.cost.size(), 0),
                          .columns = problem.program.columns,
                          .rows = {problem.program.rows.front()}};
    for (std::size_t const i : limits) program.rows.push_back(problem.program.rows[row_of(i)]);
    return minimise(program).outcome == Outcome::optimal;
}

std::vector<std::size_t> with(std::vector<std::size_t> limits, std::size_t one) {
    limits.push_back(one);
    return limits;
}

std::vector<std::size_t> without(std::vector<std::size_t> const& limits, std::size_t place) {
    std::vector<std::size_t> fewer;
    for (std::size_t i = 0; i < limits.size(); ++i) {
        if (i != place) fewer.push_back(limits[i]);
    }
    return fewer;
}

}  // namespace

bool within_reach(BlendProblem const& problem, std::size_t limit) {
    Row const& row = problem.program.rows[row_of(limit)];
    auto const [least, most] = std::minmax_element(row.coefficients.begin(), row.coefficients.end());
    return *most >= row.range.lower - hair && *least <= row.range.upper + hair;
}

std::vector<std::size_t> clashing_with(BlendProblem const& problem, std::size_t limit,
                                       std::vector<bool> const& missed) {
    if (!within_reach(problem, limit)) return {};
    std::vector<std::size_t> others;  // as many as can be kept together: what is infeasible with `limit` needs it
    for (std::size_t i = 0; i < problem.limits.size(); ++i) {
        if (!missed[i]) others.push_back(i);
    }
    for (std::size_t i = 0; i < problem.limits.size(); ++i) {
        if (missed[i] && i != limit && can_keep(problem, with(others, i))) others.push_back(i);
    }
    if (can_keep(problem, with(others, limit))) return {};
    for (std::size_t place = others.size(); place-- > 0;) {
        auto fewer = without(others, place);
        if (!can_keep(problem, with(fewer, limit))) others = std::move(fewer);
    }
    return others;
}

}  // namespace cropful::blends
