#pragma once

#include <limits>
#include <vector>

/// Linear programs: the one door to COIN-OR Clp.
namespace cropful::blends {

inline constexpr double unbounded = std::numeric_limits<double>::infinity();

struct Range {
    double lower = 0;
    double upper = unbounded;
};

struct Row {
    std::vector<double> coefficients;  // one for each column
    Range range;
};

/// Minimise cost * x, each row within its range and each x within that of its column.
struct LinearProgram {
    std::vector<double> cost;
    std::vector<Range> columns;
    std::vector<Row> rows;
};

enum class Outcome { optimal, infeasible, endless };

struct Optimum {
    Outcome outcome = Outcome::infeasible;
    double cost = 0;
    std::vector<double> x;
    std::vector<double> row_duals;      // change of the cost for one more on the row's binding side
    std::vector<double> reduced_costs;  // change of the cost for one more of a column
    bool duals_unique = false;          // the optimal corner is no crossing of more limits than it needs
    bool mix_unique = false;            // no other x costs as little
};

/// Throws std::runtime_error where Clp ends without a verdict. The same program has the same answer, bit for bit.
Optimum minimise(LinearProgram const& program);

}  // namespace cropful::blends
