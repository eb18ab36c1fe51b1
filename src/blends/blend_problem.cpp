#include "blends/blend_problem.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace cropful::blends {

using namespace quantities;

namespace {

constexpr double slack = 1e-9;  // of the total shortfall, while the cost is made least

Source const own{.text = "", .standing = domain::Standing::yours};

domain::Level const* stated(Ingredient const& ingredient, std::string const& nutrient) {
    auto const found = ingredient.holds.find(nutrient);
    return found == ingredient.holds.end() ? nullptr : &found->second;
}

/// What a row counts of an ingredient: the least for a floor, the most (or what is known of it) for a ceiling; what is
/// not stated counts for nothing.
double counted(Ingredient const& ingredient, std::string const& nutrient, bool floor) {
    auto const* level = stated(ingredient, nutrient);
    if (!level) return 0;
    return floor ? level->least : level->most.value_or(level->least);
}

double ratio_to_table(BlendLimit const& limit, Ingredient const& one) {
    auto const* energy = stated(one, "energy");
    if (!energy) return one.mineral ? 0 : 1;
    return energy->least / in_kilocalories_per_kilogram(*limit.for_energy);
}

bool anyone_states(std::vector<Ingredient> const& ingredients, std::string const& nutrient) {
    return std::any_of(ingredients.begin(), ingredients.end(),
                       [&](Ingredient const& one) { return stated(one, nutrient) != nullptr; });
}

void add_own_needs(BlendProblem& problem, domain::Blend const& wish) {
    for (auto const& [key, bounds] : wish.need) {
        if (bounds.floor) problem.limits.push_back({BlendLimit::Of::nutrient, key, true, *bounds.floor, {}, own});
        if (bounds.ceiling) problem.limits.push_back({BlendLimit::Of::nutrient, key, false, *bounds.ceiling, {}, own});
    }
}

/// Whether the wish itself says something of a nutrient's least or most.
bool wish_says(domain::Blend const& wish, std::string const& nutrient, bool floor) {
    auto const found = wish.need.find(nutrient);
    if (found == wish.need.end()) return false;
    return floor ? found->second.floor.has_value() : found->second.ceiling.has_value();
}

BlendLimit nutrient_limit(std::string const& key, bool floor, double level, Source const& source) {
    return {BlendLimit::Of::nutrient, key, floor, level, {}, source};
}

void add_table_needs(BlendProblem& problem, domain::Blend const& wish, BlendNeeds const& needs, NeedScale scale) {
    bool const by_energy = scale == NeedScale::by_energy;
    auto const energy = needs.phase.energy;
    Source const source = needs.table.source;
    if (!by_energy && !wish_says(wish, "energy", true)) {
        problem.limits.push_back(nutrient_limit("energy", true, in_kilocalories_per_kilogram(energy), source));
    }
    auto const add = [&](std::string const& nutrient, double level, Source const& from, bool borrowed) {
        if (wish_says(wish, nutrient, true)) return;
        BlendLimit limit = nutrient_limit(nutrient, true, level, from);
        if (by_energy) limit.for_energy = energy;
        limit.borrowed = borrowed;
        problem.limits.push_back(limit);
    };
    for (Need const& need : needs.phase.needs) add(need.nutrient, need.level, source, false);
    for (BlendGuide const& guide : needs.tables.guides) {
        bool const said = std::any_of(needs.phase.needs.begin(), needs.phase.needs.end(),
                                      [&](Need const& need) { return need.nutrient == guide.nutrient; });
        bool const fits =
            guide.laying == needs.phase.laying &&
            (guide.laying || (guide.from <= needs.phase.from && (!guide.to || needs.phase.from < *guide.to)));
        if (fits && !said) add(guide.nutrient, guide.at_least, guide.source, true);
    }
}

/// The built-in ceiling of a nutrient for one state of the birds; none where there is none.
BlendRule const* ceiling_of(BlendNeeds const& needs, std::string const& nutrient, bool laying) {
    for (BlendRule const& rule : needs.tables.rules) {
        bool const same = rule.of == BlendLimit::Of::nutrient && rule.key == nutrient && rule.laying == laying;
        if (same && rule.per.empty() && !rule.of_table) return &rule;
    }
    return nullptr;
}

/// Sets a built-in ceiling. Where the owner's own ceiling or floor says otherwise it is set aside; a floor above that
/// of growing birds is still held to the ceiling of layers.
void add_rule(BlendProblem& problem, domain::Blend const& wish, BlendNeeds const& needs, BlendRule const& rule,
              double level) {
    auto const limit = [](BlendRule const& from, double at_most) {
        BlendLimit made = nutrient_limit(from.key, false, at_most, from.source);
        made.per = from.per;
        return made;
    };
    auto const mine = wish.need.find(rule.key);
    double const floor = mine == wish.need.end() ? 0 : mine->second.floor.value_or(0);
    BlendRule const* plain = ceiling_of(needs, rule.key, rule.laying);
    bool const own_floor = floor > (rule.per.empty() || !plain ? level : plain->at_most);
    bool const own_ceiling = rule.per.empty() && wish_says(wish, rule.key, false);
    (own_ceiling || own_floor ? problem.set_aside : problem.limits).push_back(limit(rule, level));
    if (own_ceiling || !own_floor || !rule.per.empty()) return;
    BlendRule const* layers = ceiling_of(needs, rule.key, true);
    if (layers && floor <= layers->at_most) problem.limits.push_back(limit(*layers, layers->at_most));
}

void add_nutrient_rules(BlendProblem& problem, domain::Blend const& wish, BlendNeeds const& needs, NeedScale scale) {
    bool const laying = for_layers(wish, needs);
    for (BlendRule const& rule : needs.tables.rules) {
        if (rule.of != BlendLimit::Of::nutrient || rule.laying != laying) continue;
        if (!rule.of_table) {
            add_rule(problem, wish, needs, rule, rule.at_most);
        } else if (needs.of_a_kind() && scale == NeedScale::as_printed) {
            add_rule(problem, wish, needs, rule, rule.at_most * in_kilocalories_per_kilogram(needs.phase.energy));
        }
    }
}

void add_share_limits(BlendProblem& problem, domain::Blend const& wish, Ingredient const& one,
                      std::optional<BlendNeeds> const& needs) {
    auto const limit = [&](bool floor, double level, Source const& source) {
        return BlendLimit{BlendLimit::Of::ingredient, one.key, floor, level, {}, source};
    };
    if (one.at_least > 0) problem.limits.push_back(limit(true, one.at_least, own));
    if (one.at_most) problem.limits.push_back(limit(false, *one.at_most, own));
    if (!needs) return;
    bool const laying = for_layers(wish, needs);
    for (BlendRule const& rule : needs->tables.rules) {
        if (rule.of != BlendLimit::Of::ingredient || rule.laying != laying || rule.key != one.like) continue;
        bool const mine = one.at_most || rule.at_most <= one.at_least;
        (mine ? problem.set_aside : problem.limits).push_back(limit(false, rule.at_most, rule.source));
    }
}

/// Limits on what nobody states can be neither kept nor missed: they are told apart.
void set_unstated_apart(BlendProblem& problem) {
    std::vector<BlendLimit> kept;
    for (BlendLimit const& limit : problem.limits) {
        bool const of_nutrient = limit.of == BlendLimit::Of::nutrient;
        bool const stated = anyone_states(problem.ingredients, limit.key) &&
                            (limit.per.empty() || anyone_states(problem.ingredients, limit.per));
        if (!of_nutrient || stated) {
            kept.push_back(limit);
        } else {
            problem.unstated.push_back(limit);
        }
    }
    problem.limits = std::move(kept);
}

/// One elastic program: a column more for each limit that may give way. `most`: the greatest total shortfall allowed.
LinearProgram elastic(BlendProblem const& problem, bool shares_too, std::optional<double> most) {
    LinearProgram loose = problem.program;
    std::size_t const own_columns = loose.cost.size();
    if (!most) std::fill(loose.cost.begin(), loose.cost.end(), 0);
    Row total{.coefficients = std::vector<double>(own_columns, 0), .range = {-unbounded, most.value_or(unbounded)}};
    for (std::size_t i = 0; i < problem.limits.size(); ++i) {
        if (problem.limits[i].of == BlendLimit::Of::ingredient && !shares_too) continue;
        loose.cost.push_back(most ? 0 : 1);
        loose.columns.push_back({0, unbounded});
        total.coefficients.push_back(1);
        for (std::size_t r = 0; r < loose.rows.size(); ++r) {
            double const way = problem.limits[i].floor ? 1 : -1;
            loose.rows[r].coefficients.push_back(r == row_of(i) ? way : 0);
        }
    }
    if (most) loose.rows.push_back(total);
    return loose;
}

}  // namespace

double energy_ratio(BlendLimit const& limit, std::vector<Ingredient> const& ingredients,
                    std::vector<double> const& shares) {
    double ratio = 0;
    for (std::size_t j = 0; j < ingredients.size(); ++j) ratio += shares[j] * ratio_to_table(limit, ingredients[j]);
    return ratio;
}

double unit_of_row(BlendLimit const& limit) { return limit.level > 0 ? limit.level : 1; }

Row limit_row(BlendLimit const& limit, std::vector<Ingredient> const& ingredients) {
    Row row{.coefficients = {}, .range = {}};
    double const unit = unit_of_row(limit);
    for (Ingredient const& one : ingredients) {
        double coefficient = limit.of == BlendLimit::Of::ingredient ? (one.key == limit.key ? 1 : 0)
                                                                    : counted(one, limit.key, limit.floor);
        if (!limit.per.empty()) coefficient -= limit.level * counted(one, limit.per, true);
        coefficient /= unit;
        if (limit.for_energy) coefficient -= ratio_to_table(limit, one);
        row.coefficients.push_back(coefficient);
    }
    double const side = limit.for_energy || !limit.per.empty() ? 0 : limit.level / unit;
    row.range = limit.floor ? Range{side, unbounded} : Range{-unbounded, side};
    return row;
}

BlendProblem blend_problem(domain::Blend const& wish, std::vector<Ingredient> const& ingredients,
                           std::optional<BlendNeeds> const& needs, NeedScale scale) {
    BlendProblem problem{.ingredients = ingredients, .limits = {}, .unstated = {}, .set_aside = {}, .program = {}};
    add_own_needs(problem, wish);
    if (needs && needs->of_a_kind()) add_table_needs(problem, wish, *needs, scale);
    if (needs) add_nutrient_rules(problem, wish, *needs, scale);
    for (Ingredient const& one : ingredients) add_share_limits(problem, wish, one, needs);
    set_unstated_apart(problem);
    LinearProgram& program = problem.program;
    for (Ingredient const& one : ingredients) {
        program.cost.push_back(one.price ? in_money_per_kilogram(*one.price) : 0);
        program.columns.push_back({0, unbounded});  // that all add up to 1 keeps each below it
    }
    program.rows.push_back({std::vector<double>(ingredients.size(), 1), {1, 1}});
    for (BlendLimit const& limit : problem.limits) program.rows.push_back(limit_row(limit, ingredients));
    return problem;
}

LinearProgram with_level(BlendProblem const& problem, std::size_t limit, double level) {
    LinearProgram program = problem.program;
    BlendLimit moved = problem.limits[limit];
    moved.level = level;
    program.rows[row_of(limit)] = limit_row(moved, problem.ingredients);
    return program;
}

Nearest nearest_mix(BlendProblem const& problem) {
    bool shares_too = false;
    Optimum first = minimise(elastic(problem, shares_too, {}));
    if (first.outcome != Outcome::optimal) {
        shares_too = true;
        first = minimise(elastic(problem, shares_too, {}));
    }
    if (first.outcome != Outcome::optimal) throw std::logic_error("an elastic program is always possible");
    double const most = first.cost + slack * (1 + first.cost);
    Optimum cheapest = minimise(elastic(problem, shares_too, most));
    if (cheapest.outcome != Outcome::optimal) cheapest = first;
    Nearest nearest{.optimum = cheapest, .shortfall = first.cost, .missing = {}};
    std::size_t column = problem.ingredients.size();
    for (std::size_t i = 0; i < problem.limits.size(); ++i) {
        bool const gives = shares_too || problem.limits[i].of == BlendLimit::Of::nutrient;
        nearest.missing.push_back(gives ? cheapest.x[column++] : 0);
    }
    nearest.optimum.x.resize(problem.ingredients.size());
    return nearest;
}

double held(std::vector<Ingredient> const& ingredients, std::string const& nutrient,
            std::vector<double> const& shares) {
    double sum = 0;
    for (std::size_t j = 0; j < shares.size(); ++j) sum += shares[j] * counted(ingredients[j], nutrient, true);
    return sum;
}

bool for_layers(domain::Blend const& wish, std::optional<BlendNeeds> const& needs) {
    return needs && needs->of_a_kind() ? needs->phase.laying : wish.laying;
}

double level_reached(BlendLimit const& one, std::vector<Ingredient> const& ingredients,
                     std::vector<double> const& shares) {
    constexpr double most_times = 999;
    double sum = 0;
    for (std::size_t j = 0; j < shares.size(); ++j) {
        bool const of_nutrient = one.of == BlendLimit::Of::nutrient;
        sum += shares[j] * (of_nutrient                     ? counted(ingredients[j], one.key, one.floor)
                            : ingredients[j].key == one.key ? 1
                                                            : 0);
    }
    if (one.per.empty() || sum <= 0) return sum;
    return std::min(most_times, sum / std::max(held(ingredients, one.per, shares), sum / most_times));
}

double level_reached(BlendProblem const& problem, std::size_t limit, std::vector<double> const& shares) {
    return level_reached(problem.limits[limit], problem.ingredients, shares);
}

}  // namespace cropful::blends
