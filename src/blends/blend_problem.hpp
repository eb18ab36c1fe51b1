#pragma once

#include "blends/linear_program.hpp"
#include "cropful/blends/blend.hpp"

/// A blend as a linear program: a column for the share of each ingredient, a row for each limit. Every row is divided
/// by its own limit, so that a shortfall of 0.1 is a tenth of what was asked.
namespace cropful::blends {

struct BlendProblem {
    std::vector<Ingredient> ingredients;
    std::vector<BlendLimit> limits;     // one for each row after the first
    std::vector<BlendLimit> unstated;   // on nutrients that no ingredient states: left out of the rows
    std::vector<BlendLimit> set_aside;  // built-in ceilings that the owner's own figures overrule
    LinearProgram program;              // row 0: the shares add up to 1
};

/// All limits of a wish: its own before the kind's, the ingredients' own before the built-in ones.
BlendProblem blend_problem(domain::Blend const& wish, std::vector<Ingredient> const& ingredients,
                           std::optional<BlendNeeds> const& needs, NeedScale scale);

/// The same with one limit at another level.
LinearProgram with_level(BlendProblem const& problem, std::size_t limit, double level);

struct Nearest {
    Optimum optimum;              // of the shares alone
    double shortfall = 0;         // the least total
    std::vector<double> missing;  // by limit, in shares of it
};

/// The cheapest of the mixes with the least total shortfall. Limits on nutrients give way first; those on ingredients
/// only where the shares cannot add up otherwise.
Nearest nearest_mix(BlendProblem const& problem);

/// The least a mix holds of a nutrient, by what its ingredients state.
double held(std::vector<Ingredient> const& ingredients, std::string const& nutrient, std::vector<double> const& shares);

/// Whose ceilings a mix is held to.
bool for_layers(domain::Blend const& wish, std::optional<BlendNeeds> const& needs);

/// A limit's row times a mix, in the limit's unit; for a limit that goes with the energy, against the printed level;
/// for one that goes with another nutrient, how many times that one (999 where it is more).
double level_reached(BlendLimit const& limit, std::vector<Ingredient> const& ingredients,
                     std::vector<double> const& shares);
double level_reached(BlendProblem const& problem, std::size_t limit, std::vector<double> const& shares);

/// The place of a limit's row.
inline std::size_t row_of(std::size_t limit) { return limit + 1; }
/// The energy of a mix over the one a limit's level is for; a mineral has
/// none; anything else that states none counts as that one.
double energy_ratio(BlendLimit const& limit, std::vector<Ingredient> const& ingredients,
                    std::vector<double> const& shares);
Row limit_row(BlendLimit const& limit, std::vector<Ingredient> const& ingredients);
/// What stands for one unit of a limit in its row: its level, or 1 for a level of 0.
double unit_of_row(BlendLimit const& limit);

}  // namespace cropful::blends
