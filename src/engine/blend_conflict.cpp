#include "engine/blend_conflict.hpp"

#include <algorithm>

namespace cropful::engine {

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

}  // namespace

bool within_reach(BlendProblem const& problem, std::size_t limit) {
    Row const& row = problem.program.rows[row_of(limit)];
    auto const [least, most] = std::minmax_element(row.coefficients.begin(), row.coefficients.end());
    return *most >= row.range.lower - hair && *least <= row.range.upper + hair;
}

std::vector<std::size_t> clashing_with(BlendProblem const& problem, std::size_t limit,
                                       std::vector<bool> const& missed) {
    if (!within_reach(problem, limit)) return {};
    std::vector<std::size_t> all{limit};
    for (std::size_t i = 0; i < problem.limits.size(); ++i) {
        if (!missed[i]) all.push_back(i);
    }
    for (std::size_t i = 0; i < problem.limits.size() && can_keep(problem, all); ++i) {
        if (missed[i] && i != limit) all.push_back(i);
    }
    for (std::size_t place = all.size(); place-- > 1;) {
        std::vector<std::size_t> fewer = all;
        fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(place));
        if (!can_keep(problem, fewer)) all = fewer;
    }
    return {all.begin() + 1, all.end()};
}

}  // namespace cropful::engine
