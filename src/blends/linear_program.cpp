#include "blends/linear_program.hpp"

#include <cmath>
#include <stdexcept>

#include <ClpSimplex.hpp>
#include <CoinPackedMatrix.hpp>
#include <CoinPackedVector.hpp>

namespace cropful::blends {

namespace {

constexpr double tolerance = 1e-10;    // of Clp, on rows and on reduced costs
constexpr double at_its_bound = 1e-9;  // a basic value no farther from its bound is degenerate
constexpr int no_perturbation = 100;   // Clp's word for it
constexpr int status_optimal = 0, status_infeasible = 1, status_unbounded = 2;

void fill(ClpSimplex& model, LinearProgram const& program) {
    CoinPackedMatrix matrix(false, 0, 0);  // by rows
    matrix.setDimensions(0, static_cast<int>(program.cost.size()));
    std::vector<double> lower, upper, row_lower, row_upper;
    for (Row const& row : program.rows) {
        CoinPackedVector line;
        for (std::size_t j = 0; j < row.coefficients.size(); ++j) {
            if (row.coefficients[j] != 0) line.insert(static_cast<int>(j), row.coefficients[j]);
        }
        matrix.appendRow(line);
        row_lower.push_back(row.range.lower == -unbounded ? -COIN_DBL_MAX : row.range.lower);
        row_upper.push_back(row.range.upper == unbounded ? COIN_DBL_MAX : row.range.upper);
    }
    for (Range const& range : program.columns) {
        lower.push_back(range.lower == -unbounded ? -COIN_DBL_MAX : range.lower);
        upper.push_back(range.upper == unbounded ? COIN_DBL_MAX : range.upper);
    }
    model.loadProblem(matrix, lower.data(), upper.data(), program.cost.data(), row_lower.data(), row_upper.data());
}

bool near(double x, double bound) { return std::abs(x - bound) <= at_its_bound * (1 + std::abs(bound)); }

/// Basic, yet at one of its bounds.
bool degenerate(ClpSimplex::Status status, double value, double lower, double upper) {
    return status == ClpSimplex::basic && (near(value, lower) || near(value, upper));
}

/// Free to move from its bound at no cost.
bool free_to_move(ClpSimplex::Status status, double price, double lower, double upper) {
    return status != ClpSimplex::basic && lower < upper && std::abs(price) <= at_its_bound;
}

void judge_corner(ClpSimplex const& model, Optimum& optimum) {
    optimum.duals_unique = optimum.mix_unique = true;
    auto const look = [&](ClpSimplex::Status status, double value, double price, double lower, double upper) {
        if (degenerate(status, value, lower, upper)) optimum.duals_unique = false;
        if (free_to_move(status, price, lower, upper)) optimum.mix_unique = false;
    };
    for (int j = 0; j < model.numberColumns(); ++j) {
        look(model.getColumnStatus(j), model.getColSolution()[j], model.getReducedCost()[j], model.getColLower()[j],
             model.getColUpper()[j]);
    }
    for (int i = 0; i < model.numberRows(); ++i) {
        look(model.getRowStatus(i), model.getRowActivity()[i], model.getRowPrice()[i], model.getRowLower()[i],
             model.getRowUpper()[i]);
    }
}

Outcome verdict(ClpSimplex& model) {
    model.setLogLevel(0);
    model.setPerturbation(no_perturbation);
    model.setPrimalTolerance(tolerance);
    model.setDualTolerance(tolerance);
    model.dual();
    if (model.status() > status_unbounded) model.primal();
    switch (model.status()) {
        case status_optimal:
            return Outcome::optimal;
        case status_infeasible:
            return Outcome::infeasible;
        case status_unbounded:
            return Outcome::endless;
        default:
            throw std::runtime_error("Clp ended without a verdict, status " + std::to_string(model.status()));
    }
}

}  // namespace

Optimum minimise(LinearProgram const& program) {
    ClpSimplex model;
    fill(model, program);
    Optimum optimum;
    optimum.outcome = verdict(model);
    if (optimum.outcome != Outcome::optimal) return optimum;
    auto const columns = program.cost.size(), rows = program.rows.size();
    optimum.cost = model.objectiveValue();
    optimum.x.assign(model.getColSolution(), model.getColSolution() + columns);
    optimum.reduced_costs.assign(model.getReducedCost(), model.getReducedCost() + columns);
    optimum.row_duals.assign(model.getRowPrice(), model.getRowPrice() + rows);
    judge_corner(model, optimum);
    return optimum;
}

}  // namespace cropful::blends
